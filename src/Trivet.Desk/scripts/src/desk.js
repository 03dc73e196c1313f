// What every page of the desk has: the choice of light or dark, the keys, coming back after a lost connection, and the doors
// through which the components call the scripts that draw.
import { player } from './player.js';
import { movableStations } from './stations.js';
import { savePng, saveSvg } from './export.js';
import { onKey, singleKeys } from './keys.js';

window.trivet = {
  movableStations,
  player,
  async openScene(host, desk) {
    const { open } = await import('./scene.js');
    return open(host, desk);
  },
  /** Brings a field of the form into view and puts the cursor in it; false while the form is not there yet. */
  goTo(pointer) {
    if (!document.querySelector('.form')) return false;
    const field = document.querySelector(`[data-field="${CSS.escape(pointer)}"]`);
    field?.scrollIntoView({ block: 'center' });
    field?.focus({ preventScroll: true });
    return true;
  },
  /** Marks in a text where it is wrong: line and column from 1. */
  select(area, line, column) {
    const lines = area.value.split('\n');
    const start = lines.slice(0, line - 1).reduce((n, l) => n + l.length + 1, 0) + Math.max(0, column - 1);
    area.focus();
    area.setSelectionRange(start, start + 1);
    area.scrollTop = (area.scrollHeight / lines.length) * Math.max(0, line - 6);
  },
  /** Hands a text to the person as a file. */
  save(name, type, text) {
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([text], { type }));
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  },
};

const actions = {
  theme() {
    const root = document.documentElement;
    const dark = root.dataset.theme
      ? root.dataset.theme === 'dark'
      : matchMedia('(prefers-color-scheme: dark)').matches;
    root.dataset.theme = dark ? 'light' : 'dark';
    try {
      localStorage.setItem('trivet-theme', root.dataset.theme);
    } catch {
      // The choice then lasts as long as the page.
    }
    document.dispatchEvent(new CustomEvent('trivet-theme'));
  },
  keys() {
    document.getElementById('keys-single').checked = singleKeys.on;
    document.getElementById('keys').showModal();
  },
  'close-keys': () => document.getElementById('keys').close(),
  'save-svg': saveSvg,
  'save-png': savePng,
  reload: () => location.reload(),
  async reconnect() {
    try {
      // False: the program answered and no longer knows this page.
      if ((await window.Blazor.reconnect()) === false) location.reload();
    } catch {
      // Still no answer; the text on the page stands.
    }
  },
};

document.addEventListener('click', (e) => {
  const button = e.target.closest?.('[data-action]');
  if (button) actions[button.dataset.action]?.(button);
});
document.addEventListener('change', (e) => {
  if (e.target.id === 'keys-single') singleKeys.on = e.target.checked;
});
document.addEventListener('keydown', (e) => onKey(e, actions));
