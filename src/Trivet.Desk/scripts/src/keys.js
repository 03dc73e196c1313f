// Keys that work on every sheet. Those of a single character can be switched off (WCAG 2.2, 2.1.4), and none acts while one types.

const Setting = 'trivet-single-keys';

export const singleKeys = {
  get on() {
    try {
      return localStorage.getItem(Setting) !== 'off';
    } catch {
      return true;
    }
  },
  set on(value) {
    try {
      localStorage.setItem(Setting, value ? 'on' : 'off');
    } catch {
      // Without storage the keys stay on.
    }
  },
};

export function onKey(e, actions) {
  if (e.defaultPrevented || e.isComposing) return;
  const typing = e.target.matches?.('input:not([type=checkbox], [type=range], [type=radio]), textarea, select');

  if ((e.ctrlKey || e.metaKey) && !e.altKey && e.key.toLowerCase() === 'z' && !typing) {
    press(e, e.shiftKey ? 'redo' : 'undo');
  } else if ((e.ctrlKey || e.metaKey) && e.key.toLowerCase() === 'y' && !typing) {
    press(e, 'redo');
  } else if ((e.key === 'ArrowDown' || e.key === 'ArrowUp') && e.target.matches?.('[data-row]')) {
    const rows = [...document.querySelectorAll('[data-row]')];
    rows[rows.indexOf(e.target) + (e.key === 'ArrowDown' ? 1 : -1)]?.focus();
    e.preventDefault();
  } else if (e.key === 'Escape' && e.target.dataset?.key === 'find') {
    document.querySelector('[data-row]')?.focus();
  } else if (!typing && singleKeys.on && !e.ctrlKey && !e.metaKey && !e.altKey) {
    if (e.key === '?') actions.keys();
    else if (e.key === '/') focusOn(e, '[data-key="find"]');
    else if (/^[1-9]$/.test(e.key)) press(e, null, `[data-drawing]:nth-of-type(${e.key})`);
  }
}

function press(e, key, selector = `[data-key="${key}"]`) {
  const button = document.querySelector(selector);
  if (!button) return;
  e.preventDefault();
  if (!button.disabled) button.click();
}

function focusOn(e, selector) {
  const field = document.querySelector(selector);
  if (!field) return;
  e.preventDefault();
  field.focus();
  field.select?.();
}
