// Holds a rail delta against the MuJoCo physics engine: all six rods are bodies of their own between ball joints.
//
//   node six-rods.js MODEL.xml CASES.json
//
// CASES.json: { poses: [[h1, h2, h3], …], path: [[h1, h2, h3], …], moving: [{ heights: [h1, h2, h3], v: [x, y, z], a: [x, y, z] }, …] }, heights
// of the carriage joints above z = 0, metres; v and a are the platform's.
// Writes one line of JSON: { poses, path, falling, moving }. `poses` and `path` hold, for each entry, the platform's position, how far
// it is turned (radians) and the largest gap left between a rod's end and the platform (metres). `falling` is the engine's own
// motion: released under gravity with the carriages held by springs, the largest gap and turn seen, and for a few
// moments the carriages' heights with the platform's position.
//
// `moving` holds, for each entry, the forces of the rails that the motion needs, newtons, upward, and the largest force or torque of any
// degree of freedom that they and the joints leave unexplained.
//
// Poses: the engine gives the gaps at the six joints and their derivatives by all degrees of freedom (its equality constraints);
// the carriages are put where they belong and Newton's method with the least motion closes the gaps.
import { readFileSync } from 'node:fs';
import loadMujoco from 'mujoco-js';

const mujoco = await loadMujoco();
mujoco.FS.mkdir('/model');
mujoco.FS.writeFile('/model/six-rods.xml', readFileSync(process.argv[2], 'utf8'));
const model = mujoco.MjModel.loadFromXML('/model/six-rods.xml');
const cases = JSON.parse(readFileSync(process.argv[3], 'utf8'));

const railCount = 3, drawn = -0.166987298108; // height of the carriages at joint coordinate 0, from the model file
const nv = model.nv;
const rail = [];
for (let j = 0; j < model.njnt; j++)
  if (model.jnt_type[j] === 2) rail.push({ q: model.jnt_qposadr[j], v: model.jnt_dofadr[j] }); // 2: slide
if (rail.length !== railCount) throw new Error(`expected ${railCount} slides, found ${rail.length}`);
const railVelocities = new Set(rail.map(r => r.v));
const free = [...Array(nv).keys()].filter(v => !railVelocities.has(v));
const platform = [...Array(model.njnt).keys()].find(j => model.jnt_type[j] === 0); // 0: free
const platformAt = model.jnt_qposadr[platform];

const setRails = (data, heights) => rail.forEach((r, i) => { data.qpos[r.q] = heights[i] - drawn; });

function gap(data) {
  let worst = 0;
  for (let i = 0; i < data.nefc; i += 3)
    worst = Math.max(worst, Math.hypot(data.efc_pos[i], data.efc_pos[i + 1], data.efc_pos[i + 2]));
  return worst;
}

/** Least-motion Newton step: dq = −Jᵀ(J·Jᵀ + tiny)⁻¹·gap over the free degrees of freedom. */
function close(data) {
  const size = data.nefc;
  const j = free.map(v => Array.from({ length: size }, (_, row) => data.efc_J[row * nv + v]));
  const normal = Array.from({ length: size }, (_, a) => Array.from({ length: size }, (_, b) =>
    j.reduce((sum, column) => sum + column[a] * column[b], a === b ? 1e-14 : 0)));
  const multiplier = solve(normal, Array.from({ length: size }, (_, row) => -data.efc_pos[row]));
  const step = new Array(nv).fill(0);
  free.forEach((v, k) => { step[v] = j[k].reduce((sum, value, row) => sum + value * multiplier[row], 0); });
  mujoco.mj_integratePos(model, data.qpos, step, 1);
}

function solve(matrix, right) {
  const n = right.length, a = matrix.map((row, i) => [...row, right[i]]);
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(a[r][c]) > Math.abs(a[pivot][c])) pivot = r;
    [a[c], a[pivot]] = [a[pivot], a[c]];
    for (let r = c + 1; r < n; r++) {
      const factor = a[r][c] / a[c][c];
      for (let k = c; k <= n; k++) a[r][k] -= factor * a[c][k];
    }
  }
  const x = new Array(n);
  for (let r = n - 1; r >= 0; r--) {
    x[r] = a[r][n];
    for (let k = r + 1; k < n; k++) x[r] -= a[r][k] * x[k];
    x[r] /= a[r][r];
  }
  return x;
}

function settle(data, heights) {
  setRails(data, heights);
  for (let i = 0; i < 60; i++) {
    mujoco.mj_forward(model, data);
    if (gap(data) < 1e-14) break;
    close(data);
  }
  mujoco.mj_forward(model, data);
  return standing(data);
}

function standing(data) {
  const q = data.qpos;
  const turned = 2 * Math.asin(Math.min(1, Math.hypot(q[platformAt + 4], q[platformAt + 5], q[platformAt + 6])));
  return { p: [q[platformAt], q[platformAt + 1], q[platformAt + 2]], turned, gap: gap(data) };
}

/** From the drawn pose to the target in small steps, so that the engine stays in the same assembly mode. */
function walk(data, from, to, steps) {
  let last;
  for (let k = 1; k <= steps; k++) last = settle(data, from.map((h, i) => h + (to[i] - h) * k / steps));
  return last;
}

/** Least squares by the normal equations, columns given; directions that no column tells apart stay at zero. */
function leastSquares(columns, right) {
  const normal = columns.map((a, i) => columns.map((b, j) => dot(a, b) + (i === j ? 1e-13 : 0)));
  return solve(normal, columns.map(a => dot(a, right)));
}

function dot(a, b) {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}

const jacobian = data => Array.from({ length: nv }, (_, v) => Array.from({ length: data.nefc }, (_, row) => data.efc_J[row * nv + v]));

const platformMoves = model.jnt_dofadr[platform];
const follows = [...Array(nv).keys()].filter(v => v < platformMoves || v >= platformMoves + 6);

/** All velocities (or accelerations) that go with the platform's, which does not turn: J·x = given. */
function withPlatform(j, linear, given) {
  const rest = given.map((g, row) => g - [0, 1, 2].reduce((sum, k) => sum + j[platformMoves + k][row] * linear[k], 0));
  const found = leastSquares(follows.map(v => j[v]), rest);
  const all = new Array(nv).fill(0);
  follows.forEach((v, k) => { all[v] = found[k]; });
  linear.forEach((value, k) => { all[platformMoves + k] = value; });
  return all;
}

/**
 * Forces of the rails for a motion. The engine's inverse dynamics takes what its soft joints happen to give for granted; so their force is
 * added back, and rail forces and multipliers of the joints are found together.
 */
function forces(data, v, a) {
  const j = jacobian(data), none = new Array(data.nefc).fill(0);
  const velocity = withPlatform(j, v, none);

  // J·a + J̇·v = 0, J̇ by central differences along the motion.
  const h = 1e-5, at = Float64Array.from(data.qpos);
  const there = sign => {
    data.qpos.set(at);
    mujoco.mj_integratePos(model, data.qpos, velocity, sign * h);
    mujoco.mj_forward(model, data);
    return jacobian(data);
  };
  const plus = there(1), minus = there(-1);
  data.qpos.set(at);
  const drift = none.map((_, row) => -velocity.reduce((sum, x, k) => sum + (plus[k][row] - minus[k][row]) / (2 * h) * x, 0));
  const acceleration = withPlatform(j, a, drift);

  data.qvel.set(velocity);
  data.qacc.set(acceleration);
  mujoco.mj_inverse(model, data);
  const needed = Array.from({ length: nv }, (_, k) => data.qfrc_inverse[k] + data.qfrc_constraint[k]);
  const now = jacobian(data);
  const columns = rail.map(r => Array.from({ length: nv }, (_, k) => (k === r.v ? 1 : 0)));
  for (let row = 0; row < data.nefc; row++) columns.push(now.map(column => column[row]));
  const found = leastSquares(columns, needed);
  const left = needed.map((value, k) => Math.abs(value - columns.reduce((sum, c, i) => sum + c[k] * found[i], 0)));
  return { forces: found.slice(0, railCount), left: Math.max(...left) };
}

const level = [drawn, drawn, drawn];
const poses = cases.poses.map(heights => walk(new mujoco.MjData(model), level, heights, 8));

const along = new mujoco.MjData(model);
walk(along, level, cases.path[0], 8);
const path = cases.path.map(heights => settle(along, heights));

const moving = (cases.moving ?? []).map(({ heights, v, a }) => {
  const data = new mujoco.MjData(model);
  walk(data, level, heights, 8);
  return forces(data, v, a);
});

// The engine's joints are springs. Stiffer ones than its defaults: a time constant of two steps.
for (let e = 0; e < model.neq; e++) {
  model.eq_solref[2 * e] = 2 * model.opt.timestep;
  model.eq_solimp[5 * e] = 0.999;
  model.eq_solimp[5 * e + 1] = 0.9999;
}
const falling = new mujoco.MjData(model);
walk(falling, level, cases.path[0], 8);
const held = rail.map(r => falling.qpos[r.q]);
const motion = { gap: 0, turned: 0, moments: [] };
for (let step = 0; step < 2000; step++) {
  const target = 0.03 * Math.sin(2 * Math.PI * step / 1000);
  rail.forEach((r, i) => {
    falling.ctrl[i] = 4000 * (held[i] + (i - 1) * target - falling.qpos[r.q]) - 120 * falling.qvel[r.v];
  });
  mujoco.mj_step(model, falling);
  const now = standing(falling);
  motion.gap = Math.max(motion.gap, now.gap);
  motion.turned = Math.max(motion.turned, now.turned);
  if (step % 200 === 199) motion.moments.push({ heights: rail.map(r => falling.qpos[r.q] + drawn), p: now.p });
}

console.log(JSON.stringify({ poses, path, falling: motion, moving }));
