import {
  LADDER_DEFAULT,
  ladderReadsAs,
  markReaderOf,
  signalOf,
  switchLights,
  thresholdSigmaCounts,
  type HeadPlan,
  type Rgb,
  type Signal,
} from '../../head/index.ts';
import { seededRandom, type Random } from '../../units/index.ts';
import { addTilt, addToChannels, ownThresholds, type Conditions } from '../turn/conditions.ts';
import type { TurnModel } from '../turn/turnModel.ts';
import { causeNames, type CauseName } from './causeNames.ts';

/** Builds that share one set of streams: work can be split between blocks and still draw the same. */
export const BUILDS_PER_BLOCK = 256;

/** How large each cause is: one standard deviation. */
export interface CauseSizes {
  /** [mm] */
  readonly edgeMm: number;
  readonly boreMm: number;
  readonly alongMm: number;
  readonly acrossMm: number;
  /** Of the logarithm of a part's factor. [-] */
  readonly part: number;
  readonly resistor: number;
  /** Of the resistors of one wire. [-] */
  readonly ladder: number;
  /** [counts] */
  readonly thresholdCounts: number;
  /** [deg] */
  readonly tiltDeg: number;
  /** [mm] */
  readonly shaftMm: number;
  /** [deg] */
  readonly northDeg: number;
}

/** One stream of draws a cause. */
export type Streams = Readonly<Record<CauseName, Random>>;

/**
 * The sizes a head's process, placement, parts and converter give.
 *
 * A part's factor is lognormal, so that none comes out negative; its standard deviation is the stated spread.
 *
 * @param without - Cause taken to be absent, or `null`.
 * @param scaled - Factors on the sizes of causes. [-]
 */
export function causeSizes(
  { disc, spec, circuit, board, levels, ladder }: HeadPlan,
  without: CauseName | null,
  scaled: Readonly<Partial<Record<CauseName, number>>> = {},
): CauseSizes {
  const sizes: CauseSizes = {
    edgeMm: disc.spec.process.edgeSdMm,
    boreMm: disc.spec.process.boreSdMm,
    alongMm: spec.tangentialSdMm,
    acrossMm: spec.radialSdMm,
    part: Math.sqrt(Math.log1p(spec.detector.spread ** 2)),
    resistor: circuit.resistorTolerancePercent / 200, // as sold, the tolerance is two standard deviations
    ladder: ladder ? (circuit.ladder ?? LADDER_DEFAULT).tolerancePercent / 200 : 0,
    thresholdCounts: thresholdSigmaCounts({ circuit, board, levels }),
    tiltDeg: spec.tiltSdDeg ?? 0,
    shaftMm: spec.shaftPlaySdMm ?? 0,
    northDeg: spec.northSdDeg ?? 0,
  };
  const resized: { -readonly [Size in keyof CauseSizes]: number } = { ...sizes };
  for (const [cause, factor] of Object.entries(scaled) as [CauseName, number][]) {
    for (const size of Object.keys(NOTHING_OF[cause]) as (keyof CauseSizes)[]) resized[size] *= factor;
  }
  return without === null ? resized : { ...resized, ...NOTHING_OF[without] };
}

const NOTHING_OF: Readonly<Record<CauseName, Partial<CauseSizes>>> = {
  edge: { edgeMm: 0 },
  bore: { boreMm: 0 },
  placement: { alongMm: 0, acrossMm: 0 },
  sensor: { part: 0 },
  resistor: { resistor: 0, ladder: 0 },
  threshold: { thresholdCounts: 0 },
  tilt: { tiltDeg: 0 },
  shaft: { shaftMm: 0 },
  north: { northDeg: 0 },
};

/** True when a cause is too small to move anything. */
export function isAbsent(sizes: CauseSizes, cause: CauseName): boolean {
  return Object.keys(NOTHING_OF[cause]).every((size) => sizes[size as keyof CauseSizes] === 0);
}

/** Causes that move something on a head. */
export function presentCauses(head: HeadPlan): CauseName[] {
  const sizes = causeSizes(head, null);
  return causeNames.filter((cause) => !isAbsent(sizes, cause));
}

/** Streams of a block of builds; each cause has its own, so that taking one away leaves the others' draws as they were. */
export function streamsOf(seed: number, block: number): Streams {
  const stream = (cause: CauseName): Random => seededRandom(mixed(seed, causeNames.indexOf(cause), block));
  return {
    edge: stream('edge'),
    bore: stream('bore'),
    placement: stream('placement'),
    sensor: stream('sensor'),
    resistor: stream('resistor'),
    threshold: stream('threshold'),
    tilt: stream('tilt'),
    shaft: stream('shaft'),
    north: stream('north'),
  };
}

/** One 32-bit seed of several whole numbers, each bit of which depends on all of theirs. */
function mixed(seed: number, cause: number, block: number): number {
  let hash = 0;
  for (const value of [seed % 4294967296, Math.floor(seed / 4294967296), cause, block]) {
    hash = Math.imul(hash ^ value, 0x9e3779b1);
    hash = Math.imul(hash ^ (hash >>> 15), 0x85ebca6b);
    hash ^= hash >>> 13;
  }
  return hash | 0;
}

/** Draws builds one after another into the same conditions. */
export interface Drawer {
  draw(streams: Streams, into: Conditions): void;
}

/** A drawer for a head's model; a cause of no size draws nothing and leaves the drawing as it is. */
export function drawerOf(model: TurnModel, sizes: CauseSizes): Drawer {
  const switches = model.head.marks ? readerDrawer(model, sizes) : switchDrawer(model, sizes);
  return {
    draw: (streams, into) => {
      if (sizes.edgeMm > 0 || sizes.tiltDeg > 0) {
        drawAround(streams.edge, model.movesMm, sizes.edgeMm, into.edgeMm);
      }
      if (sizes.boreMm > 0) drawAround(streams.bore, null, sizes.boreMm, into.boreMm);
      if (sizes.tiltDeg > 0) {
        addTilt(model, [sizes.tiltDeg * streams.tilt.normal(), sizes.tiltDeg * streams.tilt.normal()], into);
      }
      if (sizes.alongMm > 0 || sizes.acrossMm > 0 || sizes.shaftMm > 0 || sizes.northDeg > 0) {
        drawAround(streams.placement, null, sizes.alongMm, into.alongMm);
        drawAround(streams.placement, null, sizes.acrossMm, into.acrossMm);
        if (sizes.shaftMm > 0 || sizes.northDeg > 0) {
          const x = sizes.shaftMm * streams.shaft.normal();
          const y = sizes.shaftMm * streams.shaft.normal();
          addToChannels(model, [x, y], sizes.northDeg * streams.north.normal(), into);
        }
      }
      if (sizes.part > 0 || sizes.resistor > 0 || sizes.thresholdCounts > 0) switches(streams, into);
      if (sizes.ladder > 0) drawLadder(model.head, sizes.ladder, streams.resistor, into);
    },
  };
}

/** Draws the resistors of one wire, and which words it then takes for others. */
function drawLadder({ ladder, board }: HeadPlan, sd: number, random: Random, into: Conditions): void {
  const factors = ladder!.resistors.map(() => Math.max(0.01, 1 + sd * random.normal()));
  into.readsAs = ladderReadsAs(ladder!, board, factors);
}

function drawAround(random: Random, middle: Float64Array | null, sd: number, into: Float64Array): void {
  for (let i = 0; i < into.length; i++) into[i] = (middle ? middle[i]! : 0) + sd * random.normal();
}

/**
 * Draws parts, resistors and thresholds, and finds the light at which each channel then changes.
 *
 * Thresholds of one's own lie halfway between what the channel really reads; shared ones stay as drawn.
 */
function switchDrawer({ head }: TurnModel, sizes: CauseSizes): (streams: Streams, into: Conditions) => void {
  const { circuit, levels, board, spec } = head;
  const signal: Signal = signalOf(spec.detector, levels.resistorOhm, circuit.sensorTo, board);
  return (streams, into) => {
    for (let c = 0; c < into.risingLight.length; c++) {
      const part = sizes.part > 0 ? Math.exp(sizes.part * streams.sensor.normal()) : 1;
      const resistor =
        sizes.resistor > 0 ? Math.max(0.01, 1 + sizes.resistor * streams.resistor.normal()) : 1;
      const off = sizes.thresholdCounts > 0 ? sizes.thresholdCounts * streams.threshold.normal() : 0;
      const own = ownThresholds(head, signal, part, resistor);
      const moved = { lowCounts: own.lowCounts + off, highCounts: own.highCounts + off };
      const lights = switchLights(moved, signal, part, resistor);
      into.risingLight[c] = lights.risingLight;
      into.fallingLight[c] = lights.fallingLight;
    }
  };
}

/** Draws the lights and sensors of channels that tell three marks apart, and what was measured on each. */
function readerDrawer({ head }: TurnModel, sizes: CauseSizes): (streams: Streams, into: Conditions) => void {
  const { spec, circuit, board, levels, marks } = head;
  const { resistorOhm } = levels;
  const parts = { detector: spec.detector, circuit, board, resistorOhm, plan: marks! };
  const factor = ({ sensor }: Streams): number =>
    sizes.part > 0 ? Math.exp(sizes.part * sensor.normal()) : 1;
  const noisy = sizes.thresholdCounts > 0;
  return (streams, into) => {
    for (let c = 0; c < into.readers.length; c++) {
      if (into.readers[c] === null) continue;
      const part = factor(streams);
      const colours: Rgb = [factor(streams), factor(streams), factor(streams)];
      const resistor =
        sizes.resistor > 0 ? Math.max(0.01, 1 + sizes.resistor * streams.resistor.normal()) : 1;
      const noise = Array.from({ length: 9 }, () => (noisy ? streams.threshold.normal() : 0));
      into.readers[c] = markReaderOf(parts, { part, resistor, colours, noise });
    }
  };
}
