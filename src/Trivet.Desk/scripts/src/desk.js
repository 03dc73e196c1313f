// What every page of the desk has: the choice of light or dark, the keys, and coming back after a lost connection.

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
  keys: () => document.getElementById('keys')?.showModal(),
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
