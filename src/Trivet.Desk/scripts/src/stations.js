// Moves stations in the plan by pointer or keys. The drawing is redrawn by the desk after each step, so everything is found again
// by its pointer into the description; where a station may stand is not decided here.

import { newestOnly } from './newest.js';

const Step = 0.001; // metres a key press moves; ten times that with Shift
const Stations = '[data-pointer^="/stations/"]';

/**
 * @param host element that holds the drawing. Its view states `data-scale` (units per metre) and where the cell's origin is drawn;
 * stations are groups with `data-pointer`. The host states in `data-drawn-x`, `data-drawn-y` how much of a move that is still going on is drawn already.
 */
export function movableStations(host, desk) {
  const stop = new AbortController();
  const on = (type, handler) => host.addEventListener(type, handler, { signal: stop.signal });
  let drag = null; // by pointer: { id, pointer, from, dx, dy, moved }
  let nudge = null; // by keys: { pointer, dx, dy }
  let focused = null;
  const report = newestOnly(({ pointer, dx, dy, done }) => desk.invokeMethodAsync('MoveStation', pointer, dx, dy, done));

  const view = () => host.querySelector('[data-scale]');
  const groupOf = (pointer) => host.querySelector(`[data-pointer="${CSS.escape(pointer)}"]`);

  function dress() {
    // Parts of a picture are not reached by assistive technology; this one has parts to work on.
    host.querySelector('svg svg svg')?.setAttribute('role', 'group');
    for (const group of host.querySelectorAll(Stations)) {
      if (group.getAttribute('tabindex')) continue;
      group.setAttribute('tabindex', '0');
      group.setAttribute('role', 'button');
      group.setAttribute('aria-roledescription', 'movable station');
      group.classList.add('movable');
      const name = group.querySelector('title')?.textContent ?? group.dataset.pointer.split('/').at(-1);
      group.setAttribute('aria-label', `${name}: arrow keys move it by 1 mm, with Shift by 10 mm`);
    }
    const again = drag?.pointer ?? focused;
    if (again && !host.contains(document.activeElement)) groupOf(again)?.focus({ preventScroll: true });
    shift();
  }

  /** The place of the cell frame under the pointer, metres. */
  function metres(e) {
    const part = view();
    const matrix = part?.getScreenCTM();
    if (!matrix) return null;
    const at = new DOMPoint(e.clientX, e.clientY).matrixTransform(matrix.inverse());
    const { scale, originX, originY } = part.dataset;
    return { x: (at.x - originX) / scale, y: (originY - at.y) / scale };
  }

  /** Until the desk has redrawn, the grasped station is shown where the hand has it. */
  function shift() {
    const group = drag && groupOf(drag.pointer);
    if (!group) return;
    const scale = view().dataset.scale;
    const { drawnX, drawnY } = host.dataset;
    group.setAttribute('transform', `translate(${(drag.dx - drawnX) * scale} ${(drawnY - drag.dy) * scale})`);
    group.classList.add('grasped');
  }

  function leave() {
    drag = nudge = null;
    report.forget();
    desk.invokeMethodAsync('LeaveStation').catch(() => {});
  }

  function settle() {
    const { pointer, dx, dy } = nudge;
    nudge = null;
    report({ pointer, dx, dy, done: true });
  }

  on('pointerdown', (e) => {
    const group = e.target.closest?.(Stations);
    const from = group && e.button === 0 && !drag ? metres(e) : null;
    if (!from) return;
    e.preventDefault();
    group.focus({ preventScroll: true });
    host.setPointerCapture(e.pointerId);
    drag = { id: e.pointerId, pointer: group.dataset.pointer, from, dx: 0, dy: 0, moved: false };
  });
  on('pointermove', (e) => {
    const at = drag?.id === e.pointerId ? metres(e) : null;
    if (!at) return;
    drag.dx = at.x - drag.from.x;
    drag.dy = at.y - drag.from.y;
    drag.moved = true;
    shift();
    report({ ...drag, done: false });
  });
  on('pointerup', (e) => {
    if (drag?.id !== e.pointerId) return;
    const { pointer, dx, dy, moved } = drag;
    drag = null;
    if (moved) report({ pointer, dx, dy, done: true });
  });
  on('pointercancel', () => drag && leave());
  on('keydown', (e) => {
    const group = e.target.closest?.(Stations);
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[e.key];
    if (e.key === 'Escape' && (drag || nudge)) leave();
    if (!group || !way || drag) return;
    e.preventDefault();
    const step = e.shiftKey ? 10 * Step : Step;
    nudge ??= { pointer: group.dataset.pointer, dx: 0, dy: 0 };
    nudge.dx += way[0] * step;
    nudge.dy += way[1] * step;
    report({ ...nudge, done: false });
  });
  on('keyup', (e) => {
    // A run of steps with a key held down is one edit.
    if (nudge && e.key.startsWith('Arrow')) settle();
  });
  on('focusin', (e) => {
    focused = e.target.closest?.(Stations)?.dataset.pointer ?? null;
  });
  on('focusout', (e) => {
    // A redraw takes the focused element away without a new target; then the focus is given back.
    if (!e.relatedTarget) return;
    focused = null;
    if (nudge) settle();
  });

  const watch = new MutationObserver(dress);
  watch.observe(host, { childList: true, subtree: true });
  dress();

  return {
    dispose() {
      stop.abort();
      watch.disconnect();
    },
  };
}
