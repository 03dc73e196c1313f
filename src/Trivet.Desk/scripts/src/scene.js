// The 3-D drawing. Everything it shows arrives as plain primitives in the cell frame (metres, z up); nothing is computed here but
// pictures: where the eye stands and which part the pointer is over.
import { Raycaster, Vector2, Vector3, Plane } from 'three';
import { Stage } from './stage.js';
import { build } from './parts.js';

/** Opens the drawing in an element. Throws where the browser cannot draw in three dimensions. */
export const open = (host, desk) => new SceneView(host, desk);

class SceneView {
  #host;
  #desk;
  #stage;
  #fixed = null;
  #moving = null;
  #tcp = new Vector3();
  #drag = null;
  #asking = false;
  #framed = false;
  #wanted = null;
  #listeners = new AbortController();

  constructor(host, desk) {
    this.#host = host;
    this.#desk = desk;
    this.#stage = new Stage(host);
    const on = (target, type, handler, options) =>
      target.addEventListener(type, handler, { signal: this.#listeners.signal, ...options });
    // Before the orbit takes it, so that a part of the robot can be grasped.
    on(host, 'pointerdown', (e) => this.#grasp(e), { capture: true });
    on(host, 'pointermove', (e) => this.#pull(e));
    on(host, 'pointerup', (e) => this.#release(e));
    on(host, 'pointercancel', (e) => this.#release(e));
    on(host, 'keydown', (e) => this.#key(e));
    on(document, 'trivet-theme', () => this.#repaint());
    on(matchMedia('(prefers-color-scheme: dark)'), 'change', () => this.#repaint());
  }

  /** What stands still. The eye moves only the first time, and once more when the robot first stands in it. */
  setFixed(items) {
    const first = this.#fixed === null;
    this.#fixed = items;
    this.#stage.show('fixed', build(items, this.#stage.colours));
    if (first) this.#stage.frame();
  }

  /** What moves with the tool, and where its centre point is; nothing where that point is out of reach. */
  setMoving(items, x, y, z) {
    const first = !this.#moving?.length && items.length > 0;
    this.#moving = items;
    this.#tcp.set(x, y, z);
    this.#stage.show('moving', build(items, this.#stage.colours));
    this.#host.dataset.reached = items.length > 0;
    this.#host.dataset.beyond = items.some((item) => item.role === 'beyond');
    // An arm may reach out further than anything that stands still.
    if (first && !this.#framed) this.#stage.frame();
    this.#framed ||= first;
  }

  look(from) {
    this.#stage.look(from);
  }

  picture() {
    return this.#stage.picture();
  }

  dispose() {
    this.#listeners.abort();
    this.#stage.dispose();
  }

  #repaint() {
    this.#stage.readColours();
    if (this.#fixed) this.#stage.show('fixed', build(this.#fixed, this.#stage.colours));
    if (this.#moving) this.#stage.show('moving', build(this.#moving, this.#stage.colours));
  }

  #ray(e) {
    const box = this.#host.getBoundingClientRect();
    const at = new Vector2(((e.clientX - box.left) / box.width) * 2 - 1, 1 - ((e.clientY - box.top) / box.height) * 2);
    const ray = new Raycaster();
    ray.setFromCamera(at, this.#stage.camera);
    return ray;
  }

  #grasp(e) {
    if (e.button !== 0 || !this.#stage.moving) return;
    const ray = this.#ray(e);
    const hit = ray.intersectObject(this.#stage.moving, true).find((h) => h.object.userData.grasp);
    if (!hit) return;
    e.stopPropagation();
    e.preventDefault();
    this.#host.focus();
    this.#host.setPointerCapture(e.pointerId);
    this.#drag = { id: e.pointerId, from: this.#tcp.clone(), hit: hit.point.clone() };
    this.#host.dataset.grasped = true;
  }

  #pull(e) {
    if (this.#drag?.id !== e.pointerId) return;
    e.stopPropagation();
    // Level by default; with Shift upright, in the plane that faces the eye.
    const normal = e.shiftKey
      ? this.#stage.camera.getWorldDirection(new Vector3()).setZ(0).normalize()
      : new Vector3(0, 0, 1);
    const at = this.#ray(e).ray.intersectPlane(
      new Plane().setFromNormalAndCoplanarPoint(normal, this.#drag.hit), new Vector3());
    if (!at) return;
    const to = this.#drag.from.clone().add(at.sub(this.#drag.hit));
    if (e.shiftKey) to.set(this.#drag.from.x, this.#drag.from.y, to.z);
    this.#ask(to);
  }

  #release(e) {
    if (this.#drag?.id !== e.pointerId) return;
    e.stopPropagation();
    this.#drag = null;
    delete this.#host.dataset.grasped;
  }

  /** One question at a time; while it is out, only the newest wish is kept. */
  async #ask(to) {
    this.#wanted = to;
    if (this.#asking) return;
    this.#asking = true;
    try {
      while (this.#wanted) {
        const { x, y, z } = this.#wanted;
        this.#wanted = null;
        const items = await this.#desk.invokeMethodAsync('MoveTool', x, y, z);
        if (items.length > 0) this.setMoving(items, x, y, z);
        else this.#host.dataset.reached = false;
      }
    } catch {
      // The page is going away or lost its connection; the connection's own notice says so.
    } finally {
      this.#asking = false;
    }
  }

  #key(e) {
    const arrows = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
    const step = arrows[e.key];
    if (step && e.altKey) this.#ask(this.#tcp.clone().add(new Vector3(step[0] * 0.01, step[1] * 0.01, 0)));
    else if (e.altKey && e.key === 'PageUp') this.#ask(this.#tcp.clone().add(new Vector3(0, 0, 0.01)));
    else if (e.altKey && e.key === 'PageDown') this.#ask(this.#tcp.clone().add(new Vector3(0, 0, -0.01)));
    else if (step && e.shiftKey) this.#stage.pan(step[0], step[1]);
    else if (step) this.#stage.turn(step[0], step[1]);
    else if (e.key === '+' || e.key === '=') this.#stage.zoom(0.85);
    else if (e.key === '-') this.#stage.zoom(1 / 0.85);
    else if (e.key === 'Home') this.#stage.frame();
    else return;
    e.preventDefault();
  }
}
