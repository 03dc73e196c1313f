// Plays a cycle: moves the robot in the drawings and marks the same instant in all charts that share the cursor "time". Where
// everything is at even steps was computed by the desk; here it is interpolated and drawn. The desk redraws drawings and charts at
// will, so everything is found again after each change.

const Svg = 'http://www.w3.org/2000/svg';
const reduced = matchMedia('(prefers-reduced-motion: reduce)');

/** With reduced motion, a play is a row of stills: this many a second, each this part of the cycle on. */
const Stills = { perSecond: 2, part: 1 / 24 };

/** @param host element that holds the transport, the drawings and the charts. */
export function player(host) {
  const stop = new AbortController();
  const on = (type, handler) => host.addEventListener(type, handler, { signal: stop.signal });
  const part = (name) => host.querySelector(`[data-motion="${name}"]`);
  let data = null;
  let t = 0;
  let rate = Number(host.querySelector('[data-motion-rate][aria-pressed="true"]')?.dataset.motionRate ?? 1);
  let playing = false;
  let last = 0;
  let frame = 0;

  // ---- the instant -------------------------------------------------------------------------------------------------------

  function set(time) {
    if (!data) return;
    t = Math.min(Math.max(time, 0), data.duration);
    const slider = part('time');
    slider.value = Math.round((1000 * t) / data.duration);
    const words = `${t.toFixed(3)} s`;
    slider.setAttribute('aria-valuetext', words);
    part('clock').textContent = words;
    draw();
  }

  function play(yes) {
    playing = yes && data !== null;
    host.toggleAttribute('data-playing', playing);
    cancelAnimationFrame(frame);
    if (!playing) return;
    last = performance.now();
    frame = requestAnimationFrame(step);
  }

  function step(now) {
    const passed = (now - last) / 1000;
    if (!reduced.matches) {
      last = now;
      set((t + passed * rate) % data.duration);
    } else if (passed > 1 / Stills.perSecond) {
      last = now;
      set((t + Stills.part * data.duration) % data.duration);
    }
    if (playing) frame = requestAnimationFrame(step);
  }

  /** Value of a track now, straight between its steps; `of` numbers stand together in one step. */
  function at(track, of = 1, which = 0) {
    const place = (t / data.duration) * data.steps;
    const i = Math.min(Math.floor(place), data.steps - 1);
    const a = track[i * of + which];
    return a + (place - i) * (track[(i + 1) * of + which] - a);
  }

  // ---- drawings ----------------------------------------------------------------------------------------------------------

  function drawView(view) {
    const still = view.querySelector('[data-moving]');
    if (!still) return;
    let live = view.querySelector('.live');
    if (!live) {
      live = document.createElementNS(Svg, 'g');
      live.setAttribute('class', 'live');
      still.after(live);
      still.style.display = 'none';
    }
    const { originX, originY, scale } = view.dataset;
    const plan = view.dataset.view === 'plan';
    const parts = plan ? data.plan : data.elevation;
    const place = (point, [x, up]) => {
      const from = point < 0 ? [0, 0, 0] : [0, 1, 2].map((k) => at(data.points[point], 3, k));
      return [Number(originX) + scale * (from[0] + x), originY - scale * ((plan ? from[1] : from[2]) + up)];
    };
    while (live.childElementCount < parts.length) live.append(document.createElementNS(Svg, 'path'));
    parts.forEach((p, i) => {
      const shape = live.children[i];
      shape.setAttribute('class', p.style);
      shape.setAttribute('d', p.outline.length > 0 ? outline(p, place, scale) : bar(p, place, scale));
    });
  }

  function outline(p, place, scale) {
    const [x, y] = place(p.from, p.fromOffset);
    const corners = [];
    for (let i = 0; i < p.outline.length; i += 2) corners.push(`${x + scale * p.outline[i]} ${y - scale * p.outline[i + 1]}`);
    return `M${corners.join('L')}Z`;
  }

  /** Two parallel lines with round ends. */
  function bar(p, place, scale) {
    const [x0, y0] = place(p.from, p.fromOffset);
    const [x1, y1] = place(p.to, p.toOffset);
    const r = Math.max(p.radius * scale, 0.6);
    const length = Math.hypot(x1 - x0, y1 - y0);
    const [nx, ny] = length > 0.01 ? [(-(y1 - y0) / length) * r, ((x1 - x0) / length) * r] : [r, 0];
    return `M${x0 + nx} ${y0 + ny}L${x1 + nx} ${y1 + ny}A${r} ${r} 0 0 0 ${x1 - nx} ${y1 - ny}L${x0 - nx} ${y0 - ny}A${r} ${r} 0 0 0 ${x0 + nx} ${y0 + ny}Z`;
  }

  // ---- charts ------------------------------------------------------------------------------------------------------------

  function drawChart(box) {
    const plot = box.querySelector('g.plot');
    if (!plot) return;
    const { originX, scaleX, originY, scaleY } = plot.dataset;
    const [left, top, width, height] = plot.dataset.plot.split(' ').map(Number);
    const across = data.tracks[box.dataset.across];
    const names = box.dataset.tracks.split(' ').filter((name) => data.tracks[name]);
    let marks = plot.querySelector('.now');
    if (!marks) {
      marks = document.createElementNS(Svg, 'g');
      marks.setAttribute('class', 'now');
      marks.append(document.createElementNS(Svg, 'line'));
      for (const _ of names) marks.append(document.createElementNS(Svg, 'circle'));
      marks.firstChild.setAttribute('class', 'x');
      plot.append(marks);
    }
    const x = Number(originX) + scaleX * (across ? at(across) : t);
    const line = marks.firstChild;
    if (across) line.setAttribute('visibility', 'hidden');
    for (const [name, value] of [['x1', x], ['x2', x], ['y1', top], ['y2', top + height]]) line.setAttribute(name, value);
    names.forEach((name, i) => {
      const dot = marks.children[i + 1];
      const y = Number(originY) + scaleY * at(data.tracks[name]);
      for (const [key, value] of [['cx', x], ['cy', Math.min(Math.max(y, top), top + height)], ['r', across ? 5 : 3], ['class', 'xf']]) dot?.setAttribute(key, value);
      dot?.setAttribute('visibility', x >= left - 1 && x <= left + width + 1 ? 'visible' : 'hidden');
    });
    if (data.stretch.length === 0) return;
    const wide = at(data.stretch);
    for (const curve of plot.querySelectorAll('[data-series="curve-now"]')) curve.setAttribute('transform', `translate(${originX * (1 - wide)} 0) scale(${wide} 1)`);
  }

  function draw() {
    if (!data) return;
    // What is drawn here is not a change to react to.
    watch.disconnect();
    for (const view of host.querySelectorAll('[data-view]')) drawView(view);
    for (const box of host.querySelectorAll('[data-tracks]')) drawChart(box);
    look();
  }

  // ---- hands -------------------------------------------------------------------------------------------------------------

  /** The time under the pointer, seconds; null outside the charts over time. */
  function timeUnder(e) {
    const plot = e.target.closest?.('[data-tracks]')?.querySelector('g.plot[data-cursor="time"]');
    const matrix = plot?.getScreenCTM();
    if (!matrix) return null;
    const x = new DOMPoint(e.clientX, e.clientY).matrixTransform(matrix.inverse()).x;
    const [left, , width] = plot.dataset.plot.split(' ').map(Number);
    return x < left || x > left + width ? null : (x - plot.dataset.originX) / plot.dataset.scaleX;
  }

  on('click', (e) => {
    if (e.target.closest?.('[data-motion="play"]')) play(!playing);
    const chosen = e.target.closest?.('[data-motion-rate]');
    if (!chosen) return;
    rate = Number(chosen.dataset.motionRate);
    for (const button of host.querySelectorAll('[data-motion-rate]')) button.setAttribute('aria-pressed', button === chosen ? 'true' : 'false');
  });
  on('input', (e) => {
    if (e.target.dataset?.motion !== 'time' || !data) return;
    play(false);
    set((e.target.value / 1000) * data.duration);
  });
  on('pointermove', (e) => {
    if (playing) return;
    const time = timeUnder(e);
    if (time !== null) set(time);
  });
  on('pointerdown', (e) => {
    const time = timeUnder(e);
    if (time === null) return;
    play(false);
    set(time);
  });

  const watch = new MutationObserver(draw);
  const look = () => watch.observe(host, { childList: true, subtree: true });
  look();

  return {
    give(playback) {
      data = playback;
      if (!data) play(false);
      host.toggleAttribute('data-ready', data !== null);
      set(t);
    },
    goTo(time) {
      play(false);
      set(time);
    },
    dispose() {
      play(false);
      stop.abort();
      watch.disconnect();
    },
  };
}
