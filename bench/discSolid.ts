// How long a disc of 10 tracks and 1,024 positions takes to become a solid, beside the same solid by mesh booleans.
import { buildCode } from '../src/core/codes/index.ts';
import { discAreaMm2, planDisc, type DiscPlan, type RingSector } from '../src/core/disc/index.ts';
import { discSolids, meshVolumeMm3, solidKernel } from '../src/core/make/index.ts';
import { jettyDisc, noNotch } from '../test/support/discSpecs.ts';

type Report = (row: { name: string; value: number; unit: string }) => void;

const OURS = 15;
const THEIRS = 3;

/** Chord of every arc within 0.01 mm, as the mesh of ours follows it. [mm] */
const CHORD_MM = 0.01;

const spec = {
  ...jettyDisc,
  bore: { shape: 'round', diameterMm: 20 },
  notch: noNotch,
  diameterMm: 400,
  hubDiameterMm: 200,
} as const;

function sidesOf(radius: number, turn: number): number {
  return Math.max(1, Math.ceil(turn / (2 * Math.acos(1 - CHORD_MM / radius))));
}

type Corner = [number, number];

function arc(radius: number, fromDeg: number, toDeg: number): Corner[] {
  const [from, to] = [(fromDeg * Math.PI) / 180, (toDeg * Math.PI) / 180];
  const sides = sidesOf(radius, Math.abs(to - from));
  return Array.from({ length: sides + 1 }, (_, side) => {
    const angle = from + ((to - from) * side) / sides;
    return [radius * Math.sin(angle), radius * Math.cos(angle)];
  });
}

/** Outline of a window, against the clock. */
function windowOutline({ innerRadiusMm, outerRadiusMm, fromDeg, toDeg }: RingSector): Corner[] {
  return [...arc(outerRadiusMm, toDeg, fromDeg), ...arc(innerRadiusMm, fromDeg, toDeg)];
}

const circle = (radius: number): Corner[] => arc(radius, 360, 0).slice(0, -1);

interface Made {
  readonly ms: number;
  readonly triangles: number;
  readonly volumeMm3: number;
}

function direct(plan: DiscPlan): Made {
  const start = performance.now();
  const [solid] = discSolids(plan);
  const ms = performance.now() - start;
  return { ms, triangles: solid!.mesh.triangles.length / 3, volumeMm3: meshVolumeMm3(solid!.mesh) };
}

/** Each window a prism of its own, all of them cut from the disc at once. */
async function byBooleans(plan: DiscPlan): Promise<Made> {
  const { Manifold, CrossSection } = await solidKernel();
  const start = performance.now();
  const prism = (outline: Corner[]) =>
    Manifold.extrude(new CrossSection([outline], 'NonZero'), plan.spec.thicknessMm + 2).translate([0, 0, -1]);
  const disc = Manifold.extrude(
    new CrossSection([circle(plan.spec.diameterMm / 2)], 'NonZero'),
    plan.spec.thicknessMm,
  );
  const windows = plan.tracks.flatMap((track) => track.windows.map(windowOutline));
  const whole = Manifold.difference([
    disc,
    prism(circle(plan.spec.bore.diameterMm / 2)),
    ...windows.map(prism),
  ]);
  const mesh = whole.getMesh();
  const ms = performance.now() - start;
  return { ms, triangles: mesh.triVerts.length / 3, volumeMm3: whole.volume() };
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;

/** Fewest triangles for the corners that the mesh of ours has on its border: a polygon with holes, twice, and its walls. */
function fewestTriangles(plan: DiscPlan, border: number): number {
  const holes = 1 + plan.tracks.reduce((sum, { windows }) => sum + windows.length, 0);
  return 2 * (border + 2 * holes - 2) + 2 * border;
}

/** Sides along the border of the upper face: edges between a face that looks up and a wall. */
function borderOf(plan: DiscPlan): number {
  const [solid] = discSolids(plan);
  const { positionsMm, triangles } = solid!.mesh;
  let walls = 0;
  for (let at = 0; at < triangles.length; at += 3) {
    const heights = [0, 1, 2].map((i) => positionsMm[3 * triangles[at + i]! + 2]!);
    if (Math.max(...heights) !== Math.min(...heights)) walls++;
  }
  return walls / 2;
}

/** Rows: time of both ways, their ratio, how far their volumes lie from the closed form, triangles over the fewest. */
export async function run(report: Report): Promise<void> {
  const plan = planDisc(buildCode('reflected-gray', 1024), spec);
  direct(plan);
  const ours = Array.from({ length: OURS }, () => direct(plan));
  const theirs: Made[] = [];
  for (let i = 0; i < THEIRS; i++) theirs.push(await byBooleans(plan));
  const [ourMs, theirMs] = [median(ours.map(({ ms }) => ms)), median(theirs.map(({ ms }) => ms))];
  const volume = discAreaMm2(plan) * spec.thicknessMm;
  const fewest = fewestTriangles(plan, borderOf(plan));
  const rows: readonly (readonly [string, number, string])[] = [
    ['10 tracks, 1,024 positions, meshed ring by ring', ourMs, 'ms'],
    ['the same solid by mesh booleans', theirMs, 'ms'],
    ['booleans over ring by ring (goal 20)', theirMs / ourMs, 'x'],
    ['triangles, ring by ring', ours[0]!.triangles, ''],
    ['triangles, booleans', theirs[0]!.triangles, ''],
    ['triangles over the fewest for its corners (goal 1.2)', ours[0]!.triangles / fewest, 'x'],
    ['volume off the closed form, ring by ring', 100 * Math.abs(ours[0]!.volumeMm3 / volume - 1), '%'],
    ['volume off the closed form, booleans', 100 * Math.abs(theirs[0]!.volumeMm3 / volume - 1), '%'],
  ];
  for (const [name, value, unit] of rows) report({ name, value: Number(value.toFixed(3)), unit });
}
