// Primitives of a scene as shapes in the manner of a shaded pencil drawing: bodies in tones between paper and ink, edges in ink.
import {
  BoxGeometry, BufferGeometry, CapsuleGeometry, DoubleSide, EdgesGeometry, Float32BufferAttribute, FrontSide, Group, LineBasicMaterial,
  LineSegments, Mesh, MeshLambertMaterial, SphereGeometry, Vector3,
} from 'three';

/** How dark a body of each role is drawn, 0 paper to 1 ink, and whether one sees through it. */
const Tones = {
  frame: { tone: 0.1 },
  robot: { tone: 0.5 },
  rod: { tone: 0.72 },
  platform: { tone: 0.6 },
  tool: { tone: 0.85 },
  station: { tone: 0.1, opacity: 0.55 },
  volume: { tone: 0.6, opacity: 0.13 },
  worst: { accent: true },
  beyond: { accent: true },
};

export function build(items, colours) {
  const group = new Group();
  for (const item of items) {
    const part = Kinds[item.kind]?.(item, colours);
    if (part) group.add(part);
  }
  return group;
}

const Kinds = {
  box(item, colours) {
    const [x, y, z, hx, hy, hz, yaw = 0] = item.numbers;
    const part = new Group();
    const shape = new BoxGeometry(2 * hx, 2 * hy, 2 * hz);
    part.add(body(item, shape, colours), edges(shape, item, colours));
    part.position.set(x, y, z);
    part.rotation.z = yaw;
    return part;
  },
  capsule(item, colours) {
    const [x0, y0, z0, x1, y1, z1, radius] = item.numbers;
    const from = new Vector3(x0, y0, z0), to = new Vector3(x1, y1, z1);
    const axis = to.clone().sub(from);
    const part = body(item, new CapsuleGeometry(radius, axis.length(), 6, 16), colours);
    part.position.copy(from).addScaledVector(axis, 0.5);
    part.quaternion.setFromUnitVectors(new Vector3(0, 1, 0), axis.normalize());
    return part;
  },
  point(item, colours) {
    const part = body(item, new SphereGeometry(0.012, 20, 14), colours);
    part.position.set(...item.numbers.slice(0, 3));
    return part;
  },
  mesh(item, colours) {
    const shape = new BufferGeometry();
    shape.setAttribute('position', new Float32BufferAttribute(item.numbers, 3));
    shape.setIndex(item.triangles);
    shape.computeVertexNormals();
    return body(item, shape, colours);
  },
};

function body(item, shape, colours) {
  const { tone = 0.3, opacity = 1, accent = false } = Tones[item.role] ?? {};
  const mesh = new Mesh(shape, new MeshLambertMaterial({
    color: accent ? colours.accent : colours.paper.clone().lerp(colours.ink, tone),
    transparent: opacity < 1,
    opacity,
    depthWrite: opacity === 1,
    side: item.kind === 'mesh' ? DoubleSide : FrontSide,
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 1,
  }));
  mesh.userData = { pointer: item.pointer, role: item.role, grasp: item.role === 'platform' || item.role === 'tool' };
  return mesh;
}

function edges(shape, item, colours) {
  const strong = item.role === 'frame' || item.role === 'volume';
  return new LineSegments(new EdgesGeometry(shape), new LineBasicMaterial({ color: strong ? colours.strong : colours.ink }));
}
