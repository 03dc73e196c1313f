// The eye, the light and the sheet that the 3-D drawing stands on. Draws only when something changed.
import {
  AmbientLight, Box3, BufferGeometry, CanvasTexture, DirectionalLight, Float32BufferAttribute, Group, LineBasicMaterial,
  LineSegments, PerspectiveCamera, Scene, Sphere, Spherical, Sprite, SpriteMaterial, Vector3, WebGLRenderer, Color,
} from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';

const AxisLength = 0.25; // metres
const GridStep = 0.1; // metres

export class Stage {
  #host;
  #renderer;
  #scene = new Scene();
  #controls;
  #groups = new Map();
  #ground = new Group();
  #size;
  #queued = false;
  #gone = false;

  constructor(host) {
    this.#host = host;
    this.#renderer = new WebGLRenderer({ antialias: true, preserveDrawingBuffer: true });
    this.#renderer.setPixelRatio(Math.min(devicePixelRatio, 2));
    const canvas = this.#renderer.domElement;
    canvas.setAttribute('aria-hidden', 'true');
    host.append(canvas);

    this.camera = new PerspectiveCamera(32, 1, 0.01, 50);
    this.camera.up.set(0, 0, 1);
    const light = new DirectionalLight(0xffffff, 1.6);
    light.position.set(-0.4, 0.6, 1);
    this.camera.add(light);
    this.#scene.add(this.camera, new AmbientLight(0xffffff, 1.7), this.#ground);

    this.#controls = new OrbitControls(this.camera, canvas);
    this.#controls.addEventListener('change', () => this.draw());
    canvas.addEventListener('webglcontextlost', (e) => {
      e.preventDefault();
      host.dataset.lost = true;
    });
    canvas.addEventListener('webglcontextrestored', () => {
      delete host.dataset.lost;
      this.draw();
    });
    this.#size = new ResizeObserver(() => this.#fit());
    this.#size.observe(host);
    this.readColours();
    this.#fit();
  }

  get fixed() {
    return this.#groups.get('fixed');
  }

  get moving() {
    return this.#groups.get('moving');
  }

  /** The inks of the page, so that the drawing follows light and dark. */
  readColours() {
    const style = getComputedStyle(this.#host);
    const ink = (name) => new Color(style.getPropertyValue(name).trim());
    this.colours = {
      paper: ink('--paper'), low: ink('--paper-low'), ink: ink('--ink'), soft: ink('--ink-soft'), rule: ink('--rule'),
      strong: ink('--rule-strong'), accent: ink('--accent'),
    };
    this.#scene.background = this.colours.paper;
    this.#layGround();
    this.draw();
  }

  show(name, group) {
    const old = this.#groups.get(name);
    if (old) {
      this.#scene.remove(old);
      release(old);
    }
    this.#groups.set(name, group);
    this.#scene.add(group);
    this.draw();
  }

  /** Puts the whole cell into the picture, seen from the front and a little above. */
  frame() {
    this.look([-0.75, -1.5, 0.75]);
  }

  /** Looks at the cell from a direction, from far enough to see all of it. */
  look(from) {
    const box = new Box3();
    for (const group of this.#groups.values()) box.expandByObject(group);
    if (box.isEmpty()) return;
    const ball = box.getBoundingSphere(new Sphere());
    const half = (this.camera.fov * Math.PI) / 360;
    const narrow = Math.min(1, this.camera.aspect);
    const distance = (ball.radius * 1.02) / Math.sin(Math.atan(Math.tan(half) * narrow));
    this.#controls.target.copy(ball.center);
    this.camera.position.copy(ball.center).addScaledVector(new Vector3(...from).normalize(), distance);
    this.#controls.update();
    this.draw();
  }

  turn(right, up) {
    const target = this.#controls.target;
    const arm = this.camera.position.clone().sub(target);
    // Spherical angles count from y; the cell's height is z.
    const s = new Spherical().setFromVector3(new Vector3(arm.x, arm.z, -arm.y));
    s.theta += right * 0.1;
    s.phi = Math.min(Math.max(s.phi - up * 0.1, 0.05), Math.PI - 0.05);
    const v = new Vector3().setFromSpherical(s);
    this.camera.position.copy(target).add(new Vector3(v.x, -v.z, v.y));
    this.#controls.update();
    this.draw();
  }

  pan(right, up) {
    const step = this.camera.position.distanceTo(this.#controls.target) * 0.05;
    const shift = new Vector3().setFromMatrixColumn(this.camera.matrix, 0).multiplyScalar(right * step)
      .addScaledVector(new Vector3().setFromMatrixColumn(this.camera.matrix, 1), up * step);
    this.camera.position.add(shift);
    this.#controls.target.add(shift);
    this.#controls.update();
    this.draw();
  }

  zoom(by) {
    const target = this.#controls.target;
    this.camera.position.sub(target).multiplyScalar(by).add(target);
    this.#controls.update();
    this.draw();
  }

  picture() {
    this.#renderer.render(this.#scene, this.camera);
    return this.#renderer.domElement.toDataURL('image/png');
  }

  draw() {
    if (this.#queued || this.#gone) return;
    this.#queued = true;
    requestAnimationFrame(() => {
      this.#queued = false;
      if (!this.#gone) this.#renderer.render(this.#scene, this.camera);
    });
  }

  dispose() {
    this.#gone = true;
    this.#size.disconnect();
    this.#controls.dispose();
    for (const group of [...this.#groups.values(), this.#ground]) release(group);
    this.#renderer.dispose();
    this.#renderer.forceContextLoss();
    this.#renderer.domElement.remove();
  }

  #fit() {
    const { clientWidth: w, clientHeight: h } = this.#host;
    if (w === 0 || h === 0) return;
    this.camera.aspect = w / h;
    this.camera.updateProjectionMatrix();
    this.#renderer.setSize(w, h);
    this.draw();
  }

  /** A floor ruled every 100 mm and the cell's axes, right-handed with z up (ISO 9787), marked with their letters. */
  #layGround() {
    release(this.#ground);
    this.#ground.clear();
    const lines = [];
    const half = 10;
    for (let i = -half; i <= half; i++) {
      const at = i * GridStep, end = half * GridStep;
      lines.push(at, -end, 0, at, end, 0, -end, at, 0, end, at, 0);
    }
    this.#ground.add(segments(lines, this.colours.rule));
    const axes = { X: [1, 0, 0], Y: [0, 1, 0], Z: [0, 0, 1] };
    for (const [letter, d] of Object.entries(axes)) {
      const tip = d.map((c) => c * AxisLength);
      this.#ground.add(segments([0, 0, 0, ...tip], this.colours.ink));
      const label = lettering(letter, this.colours.ink);
      label.position.set(...d.map((c) => c * (AxisLength + 0.03)));
      this.#ground.add(label);
    }
  }
}

function segments(numbers, colour) {
  const shape = new BufferGeometry();
  shape.setAttribute('position', new Float32BufferAttribute(numbers, 3));
  return new LineSegments(shape, new LineBasicMaterial({ color: colour }));
}

function lettering(text, colour) {
  const canvas = document.createElement('canvas');
  canvas.width = canvas.height = 64;
  const pen = canvas.getContext('2d');
  pen.font = '600 52px "Barlow Semi Condensed", sans-serif';
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.fillStyle = `#${colour.getHexString()}`;
  pen.fillText(text, 32, 34);
  const sprite = new Sprite(new SpriteMaterial({ map: new CanvasTexture(canvas), depthTest: false }));
  sprite.scale.setScalar(0.055);
  return sprite;
}

function release(group) {
  group.traverse((o) => {
    o.geometry?.dispose();
    o.material?.map?.dispose();
    o.material?.dispose();
  });
}
