import type { DiscPlan } from '../../src/core/disc/index.ts';
import type { Aperture, Detector, HeadPlan } from '../../src/core/head/index.ts';

/** What is wrong with the build that is scanned. */
export interface DenseBuild {
  /** Sideways move of an edge of a track, growth of windows included, clockwise positive. [mm] */
  moveMm(track: number, edgeDeg: number): number;
  /** Centre of the pattern: towards the index mark, and a quarter turn clockwise of it. [mm] */
  readonly boreMm: readonly [number, number];
  alongMm(channel: number): number;
  acrossMm(channel: number): number;
}

/** A build with nothing wrong but windows that grow. */
export function faultless(head: HeadPlan): DenseBuild {
  const growth = head.disc.spec.process.windowGrowthMm;
  const begins = (track: number, edge: number): boolean =>
    head.disc.tracks[track]!.windows.some((window) => apartDeg(window.fromDeg, edge) < 1e-9);
  return {
    moveMm: (track, edge) => ((begins(track, edge) ? -1 : 1) * growth) / 2,
    boreMm: [0, 0],
    alongMm: () => 0,
    acrossMm: () => 0,
  };
}

/** A change of one channel: clockwise of `angleDeg` it is as `lit` says. */
export interface DenseSwitch {
  readonly channel: number;
  readonly angleDeg: number;
  readonly lit: boolean;
}

/** What a dense scan of one turn finds. */
export interface DenseTurn {
  readonly switches: readonly DenseSwitch[];
  /** Word at each scanned angle, the first at 0. */
  readonly words: readonly string[];
}

/** A cell of the grid in which a channel changes is scanned again in so many places. [-] */
const FINER = 50;

/** Counts of one channel at every angle of a fine grid, from 0 on, and at any angle. */
export interface DenseCounts {
  readonly grid: Float64Array;
  at(angleDeg: number): number;
}

/**
 * The slow truth, first half: what every channel reads at every angle of a fine grid.
 *
 * Written apart from the tool: it shares no light, circuit or switching code with it.
 */
export function denseCounts(head: HeadPlan, build: DenseBuild, stepDeg: number): DenseCounts[] {
  const places = Math.round(360 / stepDeg);
  return head.channels.map((_, channel) => {
    const light = lightOf(head, build, channel);
    const at = (angleDeg: number): number => countsOf(head, light(angleDeg));
    return { at, grid: Float64Array.from({ length: places }, (_, i) => at((i * 360) / places)) };
  });
}

/**
 * The slow truth, second half: those counts carried through the thresholds, the shaft going round twice so that the
 * start is forgotten.
 */
export function denseTurn(
  head: HeadPlan,
  counts: readonly DenseCounts[],
  sense: 'growing' | 'falling',
): DenseTurn {
  const lit = counts.map((channel, c) => scanChannel(head, channel, c, sense));
  const { windowLevel } = head.disc.spec;
  const words = Array.from(counts[0]!.grid, (_, i) =>
    lit.map((channel) => (channel.lit[i] ? windowLevel : 1 - windowLevel)).join(''),
  );
  return { switches: lit.flatMap((channel) => channel.switches), words };
}

function scanChannel(
  head: HeadPlan,
  { grid, at }: DenseCounts,
  channel: number,
  sense: 'growing' | 'falling',
): { lit: Uint8Array; switches: DenseSwitch[] } {
  const places = grid.length;
  const { lowCounts, highCounts } = head.levels;
  const lightIsHigh = head.circuit.sensorTo === 'supply';
  const way = sense === 'growing' ? 1 : -1;
  const lit = new Uint8Array(places);
  const switches: DenseSwitch[] = [];
  let state = false;
  for (let step = 0; step < 2 * places; step++) {
    const i = (((way * step) % places) + places) % places;
    const now = grid[i]!;
    const saysLit = lightIsHigh ? now >= highCounts : now <= lowCounts;
    const saysDark = lightIsHigh ? now <= lowCounts : now >= highCounts;
    const changed: boolean = state ? saysDark && !saysLit : saysLit;
    if (changed) state = !state;
    lit[i] = Number(state);
    if (!changed || step < places) continue;
    // The cell in which it changed, scanned again finer.
    const says = (counts: number): boolean =>
      state === lightIsHigh ? counts >= highCounts : counts <= lowCounts;
    let fine = 1;
    while (fine < FINER && !says(at(((i - way + (way * fine) / FINER) * 360) / places))) fine += 1;
    const angleDeg = ((i - way + (way * (fine - 0.5)) / FINER) * 360) / places;
    switches.push({ channel, angleDeg: ((angleDeg % 360) + 360) % 360, lit: state === way > 0 });
  }
  return { lit, switches };
}

function countsOf(head: HeadPlan, light: number): number {
  const fraction = voltageFraction(head.spec.detector, head.levels.resistorOhm, head.board.supplyV, light);
  return 2 ** head.board.converterBits * (head.circuit.sensorTo === 'supply' ? fraction : 1 - fraction);
}

/** How far from its middle a spot's light is looked for on neighbours, and in how many rings. [mm], [-] */
const SPILL_REACH_MM = 8;
const SPILL_RINGS = 16;

/** Open share of the spot, each edge a straight line through the pattern's own centre, moved sideways, and neighbours'. */
function lightOf(head: HeadPlan, build: DenseBuild, channel: number): (angleDeg: number) => number {
  const { track, radiusMm, angleDeg: stands } = head.channels[channel]!;
  const radius = radiusMm + build.acrossMm(channel);
  const { aperture } = head.spec;
  const own = windowsOf(sharesOf(head, track), build, track, openShare(aperture, radiusMm));
  const across = openShare(acrossOf(aperture), Infinity);
  const inRing = (ring: { innerRadiusMm: number; outerRadiusMm: number }, at: number): number =>
    across(ring.innerRadiusMm - at) - across(ring.outerRadiusMm - at);
  const rings = head.disc.tracks;
  const neighbours = rings
    .filter((ring) => ring.track !== track && inRing(ring, radius + 1) + inRing(ring, radius - 1) > 1e-6)
    .map((ring) => {
      const shares = ring.windows.map(({ fromDeg, toDeg }) => ({ fromDeg, toDeg, share: 1 }));
      return { ring, light: windowsOf(shares, build, ring.track, openShare(aperture, Infinity)) };
    });
  /** Light through a neighbour, thin ring by thin ring. */
  const spilled = (ring: DiscPlan['tracks'][number], away: number, light: (at: number) => number): number => {
    if (inRing(ring, away) < 1e-6) return 0;
    const low = Math.max(ring.innerRadiusMm, away - SPILL_REACH_MM);
    const high = Math.min(ring.outerRadiusMm, away + SPILL_REACH_MM);
    let sum = 0;
    for (let i = 0; low < high && i < SPILL_RINGS; i++) {
      const from = low + ((high - low) * i) / SPILL_RINGS;
      const to = low + ((high - low) * (i + 1)) / SPILL_RINGS;
      const share = inRing({ innerRadiusMm: from, outerRadiusMm: to }, away);
      if (share > 1e-6) sum += share * light((from + to) / 2);
    }
    return sum;
  };
  return (angleDeg) => {
    const at = rad(angleDeg + stands) + build.alongMm(channel) / radius;
    // The spot's middle seen from the pattern's centre, x towards the index mark and y a quarter turn clockwise.
    const x = radius * Math.cos(at) - build.boreMm[0];
    const y = radius * Math.sin(at) - build.boreMm[1];
    const away = Math.hypot(x, y);
    const full = inRing(rings[track]!, away);
    return neighbours.reduce(
      (sum, { ring, light }) =>
        sum + spilled(ring, away, (at) => light((at * x) / away, (at * y) / away)) / full,
      own(x, y),
    );
  };
}

/** Light through windows as a spot with its middle at x and y sees them. */
function windowsOf(
  shares: readonly { fromDeg: number; toDeg: number; share: number }[],
  build: DenseBuild,
  track: number,
  open: (x: number) => number,
): (x: number, y: number) => number {
  const arcs = shares.map(({ fromDeg, toDeg, share }) => ({
    fromDeg,
    share,
    width: toDeg - fromDeg,
    from: edgeLine(fromDeg, build.moveMm(track, wrapped(fromDeg))),
    to: edgeLine(toDeg, build.moveMm(track, wrapped(toDeg))),
  }));
  return (x, y) => {
    const seenAt = (Math.atan2(y, x) * 180) / Math.PI;
    // Share beyond an edge so many degrees ahead: nothing or all of it where that is a quarter of a turn or more.
    const beyond = (turn: number, { sin, cos, moveMm }: EdgeLine): number =>
      Math.abs(turn) >= 90 ? Number(turn < 0) : open(sin * x - cos * y + moveMm);
    let light = 0;
    for (const { fromDeg, width, from, to, share } of arcs) {
      const begin = wrapped(fromDeg - seenAt + 180) - 180;
      for (const round of [begin - 360, begin, begin + 360]) {
        light += share * (beyond(round, from) - beyond(round + width, to));
      }
    }
    return light;
  };
}

function acrossOf(aperture: Aperture): Aperture {
  return aperture.shape === 'slit' ? { ...aperture, widthMm: aperture.lengthMm } : aperture;
}

/** Windows open to all of the spot, and ribs that take their share of it away; ribs lie inside windows. */
function sharesOf(head: HeadPlan, track: number): { fromDeg: number; toDeg: number; share: number }[] {
  const { windows, innerRadiusMm, outerRadiusMm, midRadiusMm } = head.disc.tracks[track]!;
  const { aperture } = head.spec;
  const across = openShare(acrossOf(aperture), Infinity);
  const ribs = head.disc.ribs.filter(
    (rib) => rib.outerRadiusMm > innerRadiusMm && rib.innerRadiusMm < outerRadiusMm,
  );
  return [
    ...windows.map(({ fromDeg, toDeg }) => ({ fromDeg, toDeg, share: 1 })),
    ...ribs.map(({ fromDeg, toDeg, ...rib }) => {
      const covered = across(rib.innerRadiusMm - midRadiusMm) - across(rib.outerRadiusMm - midRadiusMm);
      return { fromDeg, toDeg, share: -covered };
    }),
  ];
}

interface EdgeLine {
  readonly sin: number;
  readonly cos: number;
  readonly moveMm: number;
}

function edgeLine(edgeDeg: number, moveMm: number): EdgeLine {
  return { sin: Math.sin(rad(edgeDeg)), cos: Math.cos(rad(edgeDeg)), moveMm };
}

function wrapped(angle: number): number {
  return ((angle % 360) + 360) % 360;
}

function rad(angle: number): number {
  return (angle * Math.PI) / 180;
}

/** Degrees between two angles, the short way. */
export function apartDeg(a: number, b: number): number {
  const turn = (((a - b) % 360) + 540) % 360;
  return Math.abs(turn - 180);
}

function voltageFraction(detector: Detector, resistorOhm: number, supplyV: number, light: number): number {
  if (detector.kind === 'colour-sensor') throw new Error('three colours have no one voltage');
  if (detector.kind !== 'photoresistor') {
    const current = (light * detector.litMa + (1 - light) * detector.darkMa) / 1000;
    return Math.min(current * resistorOhm, supplyV - detector.saturationV) / supplyV;
  }
  // Stray light that makes the dark resistance, as a share of full light: log-log straight line through both points.
  const stray = Math.exp(-Math.log(detector.darkOhm / detector.litOhm) / detector.gamma);
  const lux = light + (1 - light) * stray;
  const ohm = detector.litOhm * Math.exp(-detector.gamma * Math.log(lux));
  return resistorOhm / (resistorOhm + ohm);
}

const tables = new Map<string, (x: number) => number>();

/** Share of the spot beyond an edge, from a table that adds up the spot's own profile in small slices. */
function openShare(aperture: Aperture, radiusMm: number): (x: number) => number {
  const isAskew = aperture.shape === 'slit' && Number.isFinite(radiusMm);
  const name = JSON.stringify([aperture, isAskew ? radiusMm : null]);
  const known = tables.get(name);
  if (known) return known;
  const made = isAskew ? askewTableOf(aperture, radiusMm) : tableOf(aperture);
  tables.set(name, made);
  return made;
}

/** A slit cut by a radial edge: each thin slice across meets it at a place of its own. */
function askewTableOf(
  { widthMm, lengthMm }: Extract<Aperture, { shape: 'slit' }>,
  radiusMm: number,
): (x: number) => number {
  const [places, slices] = [1_500, 60];
  const half = widthMm;
  const table = Float64Array.from({ length: places + 1 }, (_, i) => {
    const slope = Math.tan(Math.asin(Math.max(-1, Math.min(1, ((i / places) * 2 - 1) * (half / radiusMm)))));
    let open = 0;
    for (let slice = 0; slice < slices; slice++) {
      const at = radiusMm + ((slice + 0.5) / slices - 0.5) * lengthMm;
      open += Math.min(1, Math.max(0, 0.5 - (at * slope) / widthMm));
    }
    return open / slices;
  });
  return (x) => {
    const place = ((x / half + 1) / 2) * places;
    if (place <= 0) return 1;
    if (place >= places) return 0;
    const slice = Math.floor(place);
    return table[slice]! + (place - slice) * (table[slice + 1]! - table[slice]!);
  };
}

function tableOf(aperture: Aperture): (x: number) => number {
  const [half, profile] = profileOf(aperture);
  const slices = 8_000;
  const sums = new Float64Array(slices + 1);
  for (let i = 0; i < slices; i++) {
    sums[i + 1] = sums[i]! + profile(((i + 0.5) / slices) * 2 - 1);
  }
  const whole = sums[slices]!;
  return (x) => {
    const place = ((x / half + 1) / 2) * slices;
    if (place <= 0) return 1;
    if (place >= slices) return 0;
    const slice = Math.floor(place);
    return 1 - (sums[slice]! + (place - slice) * (sums[slice + 1]! - sums[slice]!)) / whole;
  };
}

/** Half the spot's size along the track, and how much light each place of -1..1 of it carries. */
function profileOf(aperture: Aperture): [number, (u: number) => number] {
  switch (aperture.shape) {
    case 'slit':
      return [aperture.widthMm / 2, () => 1];
    case 'round':
      return [aperture.diameterMm / 2, (u) => Math.sqrt(1 - u * u)];
    case 'gaussian':
      return [3 * aperture.radiusMm, (u) => Math.exp(-2 * (3 * u) ** 2)];
  }
}
