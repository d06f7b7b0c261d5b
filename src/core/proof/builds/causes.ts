import type { HeadPlan } from '../../head/index.ts';
import { showDegrees, showMm, showNumber } from '../../units/index.ts';
import type { BuildStatistics, Cause } from '../proof.ts';
import { causeNames, type CauseName } from './causeNames.ts';
import { causeSizes, isAbsent } from './draws.ts';
import { loosestFactor } from './tolerances.ts';
import { virtualBuilds, type BuildRequest } from './virtualBuilds.ts';

/** Builds of a request, made here or already by other hands. */
export type BuildMaker = (head: HeadPlan, request: BuildRequest) => BuildStatistics;

/**
 * What it would be worth to be rid of each cause, on the same builds with that cause alone taken away.
 *
 * @param turn - Mean square error of the design as drawn. [deg²]
 * @param wantedYield - Share of builds that must meet the need. [-]
 * @returns Every cause, most worthwhile first: by yield, and by the 95-of-100 error where the yield does not move.
 * @check src/core/proof/builds/virtualBuilds.test.ts
 */
export function rankedCauses(
  head: HeadPlan,
  request: BuildRequest,
  builds: BuildStatistics,
  asked: { readonly drawnSquare: number; readonly wantedYield: number; readonly make?: BuildMaker },
): Cause[] {
  const sizes = causeSizes(head, null);
  const made = asked.make ?? virtualBuilds;
  const square = (statistics: BuildStatistics): number => (statistics.rmsDeg ?? 0) ** 2;
  const added = Math.max(1e-12, square(builds) - asked.drawnSquare);
  const causes = causeNames.map((cause) => {
    const absent = isAbsent(sizes, cause);
    const without = absent ? builds : made(head, { ...request, without: cause });
    return {
      cause,
      title: TITLES[cause],
      yieldWithout: without.yield,
      p95WithoutDeg: without.maxErrorDeg.p95,
      varianceShare: Math.min(1, Math.max(0, (square(builds) - square(without)) / added)),
      loosestFactor: absent ? null : loosestFactor(head, request, asked.wantedYield, [cause]),
      advice: ADVICE[cause](head),
    };
  });
  return causes.sort(
    (a, b) => b.yieldWithout.value - a.yieldWithout.value || a.p95WithoutDeg - b.p95WithoutDeg,
  );
}

const TITLES: Readonly<Record<CauseName, string>> = {
  edge: 'Edges of windows off their place',
  bore: 'Bore off the middle of the pattern',
  placement: 'Sensors off their place',
  sensor: 'Sensors that differ from part to part',
  resistor: 'Resistors within their tolerance',
  threshold: 'Noise in the thresholds',
  tilt: 'Disc askew on its shaft',
  shaft: 'Shaft loose in its bearing',
  north: 'Head not set to north',
};

/** Factor by which a maker can often better a figure with care: half of it. */
const HALF = 0.5;

const ADVICE: Readonly<Record<CauseName, (head: HeadPlan) => string>> = {
  edge: ({ disc: { spec } }) =>
    `Edges lie within ${showMm(spec.process.edgeSdMm)} (one standard deviation). A finer process brings ` +
    `${showMm(HALF * spec.process.edgeSdMm)}; a larger disc makes the same millimetres fewer degrees.`,
  bore: ({ disc: { spec } }) =>
    `The bore lies within ${showMm(spec.process.boreSdMm)} of the pattern's middle (one standard deviation). Cut both in ` +
    `one set-up, or turn the disc on its shaft against a fixed point before gluing, to ${showMm(HALF * spec.process.boreSdMm)}.`,
  placement: ({ spec }) =>
    `Sensors stand within ${showMm(spec.tangentialSdMm)} along and ${showMm(spec.radialSdMm)} across their tracks. Drill or ` +
    'print all seats in one piece with the apertures, and let the apertures, not the sensors, set the place.',
  sensor: ({ spec, circuit }) =>
    `Parts differ by ${showNumber(100 * spec.detector.spread, 0)} % (one standard deviation). ` +
    (circuit.thresholds === 'shared'
      ? 'Set circuit.thresholds to per-channel and measure them on the build, or sort the parts by a meter.'
      : 'Sort the parts by a meter, or choose each resistor for its own sensor.'),
  resistor: ({ circuit }) =>
    circuit.resistorTolerancePercent > 1
      ? `Use 1 % resistors in place of ${showNumber(circuit.resistorTolerancePercent, 1)} %, or sort them by a meter.`
      : 'These resistors are as good as is sold; measure thresholds on each channel of the build.',
  threshold: ({ circuit, levels, speed }) =>
    `A conversion is noisy by ${showNumber(circuit.noiseCounts, 1)} counts. Average several readings when thresholds ` +
    `are measured, and keep wires short${capacitorText(levels.sourceOhm, speed.lagMs + speed.loopMs)}.`,
  tilt: ({ spec }) =>
    `The disc tilts by ${showDegrees(spec.tiltSdDeg ?? 0)} (one standard deviation). Press it against a shoulder of the shaft.`,
  shaft: ({ spec }) =>
    `The shaft stands within ${showMm(spec.shaftPlaySdMm ?? 0)} of its bearing's middle (one standard deviation). Use two ball ` +
    'bearings some way apart, or shim the bearing.',
  north: ({ spec }) =>
    `North is set within ${showDegrees(spec.northSdDeg ?? 0)} (one standard deviation). Set it by a distant landmark of known ` +
    'bearing, not by a compass near iron.',
};

/** Capacitors that quieten an input, largest first. [nF] */
const CAPACITORS_NF = [100, 10, 1];
/** Share of the reading's own delay that a capacitor may add. Common practice, no source. [-] */
const CAPACITOR_SHARE = 0.1;

/** The largest capacitor whose delay with the source, R C, is small beside that of the reading; empty where none is. */
function capacitorText(sourceOhm: number, delayMs: number): string {
  const fitting = CAPACITORS_NF.find(
    (nanofarad) => sourceOhm * nanofarad * 1e-6 <= CAPACITOR_SHARE * delayMs,
  );
  return fitting === undefined ? '' : `, with ${fitting} nF from each input to ground`;
}
