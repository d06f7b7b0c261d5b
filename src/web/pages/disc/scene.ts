import {
  AmbientLight,
  Box3,
  BufferAttribute,
  BufferGeometry,
  Color,
  DirectionalLight,
  EdgesGeometry,
  Group,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshStandardMaterial,
  PerspectiveCamera,
  Scene as Space,
  Vector3,
  WebGLRenderer,
} from 'three';
import type { SolidView } from '../../engine/solidsView.ts';

/** A picture in space that one looks round in. */
export interface Scene {
  show(bodies: readonly SolidView[]): void;
  end(): void;
}

/** Where one looks from: round the part, above it, and how far in sizes of the part. [rad], [rad], [-] */
interface View {
  round: number;
  above: number;
  far: number;
}

const KEY_TURN = Math.PI / 24;
const DRAG_TURN_PER_PIXEL = 0.008;
const NEAREST = 0.7;
const FARTHEST = 6;

/** Faces that meet at more than this are parted by a line, as on a drawing. [deg] */
const LINE_DEG = 20;

/** A colour of the look in use. */
function colourOf(name: string): Color {
  return new Color(getComputedStyle(document.documentElement).getPropertyValue(name).trim());
}

function meshOf({ mesh, colour }: SolidView): Mesh {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(mesh.positionsMm, 3));
  geometry.setIndex(new BufferAttribute(mesh.triangles, 1));
  // Every face flat: parts are cut and printed, not cast.
  const flat = geometry.toNonIndexed();
  flat.computeVertexNormals();
  geometry.dispose();
  const material = new MeshStandardMaterial({
    color: colour ? new Color(colour) : colourOf('--material'),
    roughness: 0.8,
  });
  const lines = new LineSegments(
    new EdgesGeometry(flat, LINE_DEG),
    new LineBasicMaterial({ color: colourOf('--ink'), transparent: true, opacity: 0.6 }),
  );
  const body = new Mesh(flat, material);
  body.add(lines);
  return body;
}

function clear(group: Group): void {
  group.traverse((child) => {
    if (!(child instanceof Mesh || child instanceof LineSegments)) return;
    child.geometry.dispose();
    (child.material as MeshStandardMaterial | LineBasicMaterial).dispose();
  });
  group.clear();
}

/** Puts the middle of a part into the middle of the picture. @returns Its largest size. [mm] */
function centre(group: Group): number {
  group.position.set(0, 0, 0);
  const box = new Box3().setFromObject(group);
  group.position.copy(box.getCenter(new Vector3()).negate());
  return Math.max(...box.getSize(new Vector3()).toArray());
}

/** A scene on a canvas; `null` where the browser draws nothing in space. */
export function openScene(canvas: HTMLCanvasElement): Scene | null {
  const renderer = rendererOn(canvas);
  if (renderer === null) return null;
  const space = new Space();
  const camera = new PerspectiveCamera(35, 4 / 3, 0.1, 20_000);
  camera.up.set(0, 0, 1);
  const group = new Group();
  const lamp = new DirectionalLight(0xffffff, 2.2);
  space.add(group, new AmbientLight(0xffffff, 1.1), lamp);
  const view: View = { round: -0.6, above: 0.7, far: 2.1 };
  let sizeMm = 100;
  let frame = 0;
  const draw = (): void => {
    frame = 0;
    const width = canvas.clientWidth;
    const height = canvas.clientHeight;
    renderer.setPixelRatio(Math.min(2, devicePixelRatio));
    renderer.setSize(width, height, false);
    camera.aspect = width / Math.max(1, height);
    camera.updateProjectionMatrix();
    const far = sizeMm * view.far;
    const flat = far * Math.cos(view.above);
    camera.position.set(
      flat * Math.sin(view.round),
      -flat * Math.cos(view.round),
      far * Math.sin(view.above),
    );
    camera.lookAt(0, 0, 0);
    lamp.position.copy(camera.position).add({ x: -sizeMm, y: 0, z: sizeMm });
    space.background = colourOf('--sheet');
    renderer.render(space, camera);
  };
  const ask = (): void => {
    if (frame === 0) frame = requestAnimationFrame(draw);
  };
  const endLooking = lookRound(canvas, view, ask);
  const resized = new ResizeObserver(ask);
  resized.observe(canvas);
  const themed = new MutationObserver(ask);
  themed.observe(document.documentElement, { attributeFilter: ['data-theme'] });
  return {
    show(bodies) {
      clear(group);
      for (const body of bodies) group.add(meshOf(body));
      sizeMm = centre(group);
      ask();
    },
    end() {
      cancelAnimationFrame(frame);
      endLooking();
      resized.disconnect();
      themed.disconnect();
      clear(group);
      renderer.dispose();
    },
  };
}

function rendererOn(canvas: HTMLCanvasElement): WebGLRenderer | null {
  try {
    return new WebGLRenderer({ canvas, antialias: true });
  } catch {
    return null;
  }
}

/** Drag, wheel and keys. @returns Ends it. */
function lookRound(canvas: HTMLCanvasElement, view: View, ask: () => void): () => void {
  let last: { x: number; y: number } | null = null;
  const by = (round: number, above: number, factor = 1): void => {
    view.round += round;
    view.above = Math.max(-1.5, Math.min(1.5, view.above + above));
    view.far = Math.max(NEAREST, Math.min(FARTHEST, view.far * factor));
    ask();
  };
  const ends = new AbortController();
  const { signal } = ends;
  canvas.addEventListener(
    'pointerdown',
    ({ clientX, clientY, pointerId }) => {
      last = { x: clientX, y: clientY };
      canvas.setPointerCapture(pointerId);
    },
    { signal },
  );
  canvas.addEventListener(
    'pointermove',
    ({ clientX, clientY }) => {
      if (last === null) return;
      by((last.x - clientX) * DRAG_TURN_PER_PIXEL, (clientY - last.y) * DRAG_TURN_PER_PIXEL);
      last = { x: clientX, y: clientY };
    },
    { signal },
  );
  canvas.addEventListener('pointerup', () => void (last = null), { signal });
  canvas.addEventListener(
    'wheel',
    (event) => {
      if (event.ctrlKey) return;
      event.preventDefault();
      by(0, 0, event.deltaY > 0 ? 1.1 : 1 / 1.1);
    },
    { signal, passive: false },
  );
  const keys: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => by(-KEY_TURN, 0),
    ArrowRight: () => by(KEY_TURN, 0),
    ArrowUp: () => by(0, KEY_TURN),
    ArrowDown: () => by(0, -KEY_TURN),
    '+': () => by(0, 0, 1 / 1.1),
    '-': () => by(0, 0, 1.1),
  };
  canvas.addEventListener(
    'keydown',
    (event) => {
      const turn = event.altKey || event.ctrlKey || event.metaKey ? undefined : keys[event.key];
      if (!turn) return;
      event.preventDefault();
      turn();
    },
    { signal },
  );
  return () => ends.abort();
}
