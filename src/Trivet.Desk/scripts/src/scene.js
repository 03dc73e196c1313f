// The 3-D drawing. Everything it shows arrives as plain primitives in the cell frame (metres, z up); nothing is computed here but
// pictures: where the eye stands and which part the pointer is over.
import { Raycaster, Vector2, Vector3, Plane } from 'three';
import { Stage } from './stage.js';
import { build } from './parts.js';
import { newestOnly } from './newest.js';

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
  #framed = false;
  #carry = null; // a station in the hand: { id, pointer, hit, dx, dy }
  #shown = { dx: 0, dy: 0 };
  #report = newestOnly(({ pointer, dx, dy, done }) => this.#desk.invokeMethodAsync('MoveStation', pointer, dx, dy, done));
  #ask = newestOnly(async ({ x, y, z }) => {
    const items = await this.#desk.invokeMethodAsync('MoveTool', x, y, z);
    if (items.length > 0) this.setMoving(items, x, y, z);
    else this.#host.dataset.reached = false;
  });
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

  /**
   * What stands still. The eye moves only the first time, and once more when the robot first stands in it.
   * @param dx, dy how much of a station's move that still goes on these items show already.
   */
  setFixed(items, dx = 0, dy = 0) {
    const first = this.#fixed === null;
    this.#fixed = items;
    this.#shown = { dx, dy };
    this.#stage.show('fixed', build(items, this.#stage.colours));
    this.#shift();
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
    if (e.button !== 0 || this.#drag || this.#carry) return;
    const ray = this.#ray(e);
    const of = (group) => (group ? ray.intersectObject(group, true) : []);
    const tool = of(this.#stage.moving).find((h) => h.object.userData.grasp);
    const still = of(this.#stage.fixed).filter((h) => h.object.isMesh && h.object.userData.role !== 'volume')[0];
    const station = still?.object.userData.role === 'station' ? still : null;
    if (!tool && !station) return;
    e.stopPropagation();
    e.preventDefault();
    this.#host.focus();
    this.#host.setPointerCapture(e.pointerId);
    const held = tool && !(station && station.distance < tool.distance) ? tool : station;
    this.#host.dataset.grasped = held.object.userData.pointer;
    if (held === tool) {
      this.#drag = { id: e.pointerId, from: this.#tcp.clone(), hit: tool.point.clone() };
    } else {
      this.#shown = { dx: 0, dy: 0 };
      this.#carry = { id: e.pointerId, pointer: held.object.userData.pointer, hit: held.point.clone(), dx: 0, dy: 0, moved: false };
    }
  }

  #pull(e) {
    if (this.#carry?.id === e.pointerId) return this.#take(e);
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

  /** A station goes along level, as it would on the floor; where it may stand is decided by the desk. */
  #take(e) {
    e.stopPropagation();
    const carry = this.#carry;
    const at = this.#ray(e).ray.intersectPlane(new Plane().setFromNormalAndCoplanarPoint(new Vector3(0, 0, 1), carry.hit), new Vector3());
    if (!at) return;
    carry.dx = at.x - carry.hit.x;
    carry.dy = at.y - carry.hit.y;
    carry.moved = true;
    this.#shift();
    this.#report({ ...carry, done: false });
  }

  /** Until the desk has drawn it, the station is shown where the hand has it. */
  #shift() {
    for (const part of this.#stage.fixed?.children ?? []) {
      const mesh = part.isMesh ? part : part.children[0];
      const own = this.#carry && mesh?.userData.pointer === this.#carry.pointer && mesh.userData.role === 'station';
      part.userData.at ??= part.position.clone();
      part.position.copy(part.userData.at);
      if (own) part.position.add(new Vector3(this.#carry.dx - this.#shown.dx, this.#carry.dy - this.#shown.dy, 0));
    }
    this.#stage.draw();
  }

  #release(e) {
    const mine = [this.#drag, this.#carry].find((held) => held?.id === e.pointerId);
    if (!mine) return;
    e.stopPropagation();
    if (mine === this.#carry) {
      if (e.type === 'pointercancel') this.#putBack();
      else if (mine.moved) this.#report({ ...mine, done: true });
    }
    this.#drag = this.#carry = null;
    delete this.#host.dataset.grasped;
  }

  #putBack() {
    this.#carry = null;
    this.#report.forget();
    this.#shift();
    this.#desk.invokeMethodAsync('LeaveStation').catch(() => {});
  }

  #key(e) {
    const arrows = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
    const step = arrows[e.key];
    if (e.key === 'Escape' && this.#carry) {
      this.#putBack();
      delete this.#host.dataset.grasped;
      return;
    }
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
