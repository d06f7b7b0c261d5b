import type { DiscSpec } from '../../disc/index.ts';
import type { HeadPlan } from '../../head/index.ts';
import type { PowerPlan } from '../../program/index.ts';
import type { Proof, Share } from '../../proof/index.ts';
import { showDegrees, showMm, showNumber } from '../../units/index.ts';

/** One row of a table of facts: what, and how much. */
export type Fact = readonly [string, string];

function boreText({ bore }: DiscSpec): string {
  if (bore.shape === 'round') return `round, ${showMm(bore.diameterMm)}`;
  if (bore.shape === 'hex') return `hexagon, ${showMm(bore.diameterMm)} across the flats`;
  return `D, ${showMm(bore.diameterMm)}, ${showMm(bore.acrossFlatMm)} across the flat`;
}

/** What the finished disc measures, so that it can be checked with a caliper. */
export function discFacts({ disc, channels }: HeadPlan): Fact[] {
  const { spec, code } = disc;
  const bands = disc.tracks.map(
    ({ track, innerRadiusMm, outerRadiusMm }) =>
      `track ${track}: ${showNumber(innerRadiusMm, 2)} to ${showNumber(outerRadiusMm, 2)} mm`,
  );
  const places = channels.map(
    ({ channel, radiusMm, angleDeg }) =>
      `channel ${channel}: radius ${showMm(Number(radiusMm.toFixed(2)))}, angle ${showDegrees(angleDeg)}`,
  );
  return [
    ['Diameter over the rim', showMm(spec.diameterMm)],
    ['Thickness', showMm(spec.thicknessMm)],
    ['Bore', boreText(spec)],
    ['Code', `${code.family}, ${code.positions} positions of ${showDegrees(360 / code.positions)}`],
    ['Tracks, radius from and to', bands.join('; ')],
    ['Sensors, from the axis', places.join('; ')],
    [
      'Process',
      `${spec.process.kind}; windows from ${showMm(spec.process.minWindowMm)}, lands from ${showMm(spec.process.minLandMm)}`,
    ],
  ];
}

/** What a multimeter or the program should show. */
export function signalFacts({ levels, speed, circuit }: HeadPlan): Fact[] {
  const counts = (value: number): string => `${showNumber(value, 0)} counts`;
  return [
    [
      'Fixed resistor',
      `${showNumber(levels.resistorOhm, 0)} ohm (widest swing at ${showNumber(levels.bestResistorOhm, 0)} ohm)`,
    ],
    ['Lit, dark', `${counts(levels.litCounts)}, ${counts(levels.darkCounts)}`],
    [
      'Thresholds',
      `${counts(levels.lowCounts)} and ${counts(levels.highCounts)}${circuit.thresholds === 'per-channel' ? '; measure each channel and set its own' : ''}`,
    ],
    ['Margins lit, dark', `${counts(levels.litMarginCounts)}, ${counts(levels.darkMarginCounts)}`],
    [
      'Slowest answer',
      `${showNumber(speed.lagMs, 1)} ms after the light changes, one read every ${showNumber(speed.loopMs, 1)} ms`,
    ],
    ['Fastest turn with every position read', `${showNumber(speed.limitDegPerS, 0)}°/s`],
  ];
}

function shareText({ value, low, high }: Share): string {
  const percent = (share: number): string => showNumber(100 * share, 1);
  return `${percent(value)} % (95 of 100 chances that the true share lies between ${percent(low)} and ${percent(high)} %)`;
}

/** What the proof found. */
export function proofFacts({ exactTurn, builds }: Proof): Fact[] {
  const { p50, p95, worst } = builds.maxErrorDeg;
  return [
    [
      'As drawn',
      exactTurn.errors.rmsDeg === null || exactTurn.errors.maxDeg === null
        ? 'shows no position'
        : `error ${showDegrees(exactTurn.errors.rmsDeg)} rms, ${showDegrees(exactTurn.errors.maxDeg)} at most`,
    ],
    [`Of ${builds.builds} virtual builds (seed ${builds.seed}) meet the need`, shareText(builds.yield)],
    [
      'Largest error of a build',
      `half within ${showDegrees(p50)}, 95 of 100 within ${showDegrees(p95)}, worst ${showDegrees(worst)}`,
    ],
  ];
}

/** What it draws, how long a battery lasts, and what a plan of sleep makes unknowable. */
export function powerFacts(plan: PowerPlan, shortfalls: readonly string[]): Fact[] {
  const ma = (current: number): string => `${showNumber(current, current < 1 ? 3 : 1)} mA`;
  const shares = plan.shares.map(({ what, averageMa }): Fact => [what, ma(averageMa)]);
  return [
    ...shares,
    ['All together, on average', ma(plan.averageMa)],
    ...(plan.batteryDays === null
      ? []
      : [['The battery alone lasts', `${showNumber(plan.batteryDays, 1)} days`] as const]),
    ...(plan.panelW === null ? [] : [['Solar panel, at least', `${showNumber(plan.panelW, 2)} W`] as const]),
    ...shortfalls.map((words): Fact => ['This will not do', words]),
    ...plan.unknowable.map((words): Fact => ['Cannot be known with this plan', words]),
    ...plan.notes.map((words): Fact => ['Note', words]),
  ];
}
