import { lightLevel, seenAsDrawn, signalOf, type HeadPlan } from '../../src/core/head/index.ts';
import { headingOfPosition, type Instrument } from '../../src/core/instrument/index.ts';
import { sampleFlags, sampleWith, type Sample } from '../../src/core/record/index.ts';
import { degToRad, radToDeg, seededRandom, turnBetween, wrapDegrees } from '../../src/core/units/index.ts';
import { atWork, type Damage } from './damage.ts';
import { inventedWind, type TrueWind } from './inventedWind.ts';

const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;
/** Cups of the jetty. [m], [m/s] */
const RUN_PER_PULSE_M = 0.6;
const START_M_PER_S = 0.5;
/** The vane stands below this. [m/s] */
const VANE_START_M_PER_S = 0.4;
/** Way of the air in which a vane has followed a turn to a half or so. [m] */
const DELAY_M = 1.5;
/** Bore of this build off the middle. [mm] */
const BORE_MM = 0.3;
/** Places of the turn at which light is worked out. [-] */
const BINS = 1440;

/** A year, or part of one, of an invented vane. */
export interface VaneYear {
  readonly instrument: Instrument;
  readonly head: HeadPlan;
  readonly seed: number;
  readonly fromMs: number;
  readonly untilMs: number;
  readonly stepMs: number;
  readonly damages: readonly Damage[];
}

/** Light of each channel at each place of the turn, the bore of this build being off. [-] */
function lightTable(head: HeadPlan): Float64Array[] {
  return head.channels.map(({ track, angleDeg, radiusMm }) => {
    const seen = seenAsDrawn(head.disc, track, head.spec);
    return Float64Array.from({ length: BINS }, (_, bin) => {
      const discDeg = (bin * 360) / BINS;
      const offDeg = radToDeg(BORE_MM / radiusMm) * Math.sin(degToRad(discDeg + 40));
      return lightLevel(seen, discDeg + angleDeg + offDeg);
    });
  });
}

/** Samples of an invented vane with the disc as built, as the record would hold them, and the wind that was. */
export function* vaneYear(year: VaneYear): Generator<{ readonly sample: Sample; readonly truth: TrueWind }> {
  const { instrument, head, stepMs, damages, seed } = year;
  const { code } = head.disc;
  const random = seededRandom(seed + 1_000_003);
  const signal = signalOf(head.spec.detector, head.levels.resistorOhm, head.circuit.sensorTo, head.board);
  const table = lightTable(head);
  const threshold = (head.levels.risingLight + head.levels.fallingLight) / 2;
  const sign = instrument.head.patternedFace === 'up' ? -1 : 1;
  const levelOf = (isLit: boolean): string =>
    String(isLit ? head.disc.spec.windowLevel : 1 - head.disc.spec.windowLevel);
  let [vaneDeg, pulses, edges, line, minute, wasOff] = [230, 0, 0, 0, -1, false];
  for (const truth of inventedWind(year)) {
    const { atMs } = truth;
    const on = <K extends Damage['kind']>(kind: K) =>
      damages.length === 0 ? undefined : atWork(damages, kind, atMs);
    if (truth.speedMPerS >= VANE_START_M_PER_S && !on('frozen-vane')) {
      const follows = 1 - Math.exp((-truth.speedMPerS * stepMs) / 1000 / DELAY_M);
      vaneDeg = wrapDegrees(vaneDeg + follows * turnBetween(vaneDeg, truth.headingDeg));
    }
    const hourOfDay = (atMs % DAY_MS) / HOUR_MS;
    const run = cupsOf(truth.speedMPerS, on('seized-cups') !== undefined, on('bearing-wear'), atMs) * stepMs;
    const fresh = Math.floor(run / 1000 / RUN_PER_PULSE_M + random.uniform());
    if (on('lost-power') && hourOfDay >= 3 && hourOfDay < 6) {
      wasOff = true;
      continue;
    }
    const jump = on('clock-jump');
    if (jump && atMs - jump.fromMs < HOUR_MS) continue;
    if (wasOff) [pulses, edges, wasOff] = [0, 0, false];
    pulses += fresh;
    edges += fresh * (on('contact-bounce') ? 4 : 2);
    line++;
    const discDeg = wrapDegrees(
      sign * (vaneDeg + (on('slipped-clamp')?.byDeg ?? 0) - instrument.site.northOffsetDeg),
    );
    const bin = Math.floor((discDeg * BINS) / 360) % BINS;
    const lights = table.map((levels, channel) =>
      lightOf(levels[bin]!, channel, discDeg, on, atMs, hourOfDay),
    );
    const seen = lights.map((light) => levelOf(light > threshold));
    const stuck = on('stuck-channel');
    if (stuck) seen[stuck.channel] = stuck.level;
    for (const kind of ['chatter', 'illegal-words'] as const) {
      const noisy = on(kind);
      if (!noisy || random.uniform() > noisy.chance) continue;
      // Chatter is noise near the threshold only; a loose wire reads wrong anywhere.
      const isNear = lights[noisy.channel]! > 0.003 && lights[noisy.channel]! < 0.6;
      if (kind === 'illegal-words' || isNear) seen[noisy.channel] = seen[noisy.channel] === '1' ? '0' : '1';
    }
    const word = seen.join('');
    const position = code.positionOf(word);
    const thisMinute = Math.floor(atMs / 60_000);
    const isNewMinute = thisMinute !== minute;
    minute = thisMinute;
    const warmth = 1 + 0.03 * Math.cos((2 * Math.PI * (hourOfDay - 15)) / 24);
    const skips = on('skipped-steps');
    const rate = fresh / (stepMs / 1000);
    yield {
      truth,
      sample: sampleWith({
        station: 'jetty',
        atMs,
        withinMs: 500,
        headingDeg: position === null ? null : headingOfPosition(instrument, position),
        halfWidthDeg: position === null ? null : 180 / code.positions,
        speedMPerS: rate === 0 ? 0 : START_M_PER_S + RUN_PER_PULSE_M * rate,
        flags:
          (position === null ? sampleFlags.illegalWord : 0) |
          (skips && random.uniform() < skips.chance ? sampleFlags.impossibleJump : 0),
        word,
        counts: isNewMinute
          ? lights.map((light) =>
              Math.max(0, Math.floor(signal.counts(light, warmth, 1) + 1.5 * random.normal())),
            )
          : null,
        pulses,
        edges,
        stream: 1,
        line,
      }),
    };
  }
}

/** Speed that the cups turn to pulses. [m/s] */
function cupsOf(
  speed: number,
  isSeized: boolean,
  worn: (Damage & { kind: 'bearing-wear' }) | undefined,
  atMs: number,
): number {
  if (isSeized) return 0;
  // Wear comes over three weeks.
  const share = worn ? Math.min(1, (atMs - worn.fromMs) / (21 * DAY_MS)) : 0;
  const start = START_M_PER_S + share * ((worn?.startMPerS ?? START_M_PER_S) - START_M_PER_S);
  return speed < start ? 0 : Math.max(0, speed - START_M_PER_S);
}

type On = <K extends Damage['kind']>(kind: K) => (Damage & { kind: K }) | undefined;

/** Light on a channel after whatever stands in its way. [-] */
function lightOf(
  open: number,
  channel: number,
  discDeg: number,
  on: On,
  atMs: number,
  hourOfDay: number,
): number {
  let light = open;
  const dim = on('dim-light');
  if (dim?.channel === channel) light *= Math.max(0, 1 - (dim.perDay * (atMs - dim.fromMs)) / DAY_MS);
  const dirt = on('dirty-sector');
  if (dirt?.channel === channel && Math.floor((discDeg * 32) / 360) === dirt.position) light *= dirt.left;
  if (on('condensation') && hourOfDay >= 3 && hourOfDay < 7) light *= 0.6;
  const leak = on('ambient-leak');
  if (leak) light += leak.share * Math.max(0, Math.sin((Math.PI * (hourOfDay - 6)) / 12));
  return light;
}
