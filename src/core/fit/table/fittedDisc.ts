import type { HeadPlan } from '../../head/index.ts';
import { radToDeg, turnBetween, wrapDegrees } from '../../units/index.ts';
import { fitAngles, type FittedAngles, type MarkFact } from '../angles/fitAngles.ts';
import type { ColumnLevels } from '../levels/channelLevels.ts';
import type { FittedBore, FittedChannel, FittedDisc } from '../fit.ts';
import type { RankedWiring } from '../wiring/rankWirings.ts';
import { edgeWidths } from '../wiring/softness.ts';
import type { Understood } from '../wiring/understood.ts';
import { builtTable, isNeverEnding, tableError, type BuiltPosition } from './builtTable.ts';
import { interpolationOf } from './edgeCurves.ts';
import { drawnAngles, misreadsOf, type Reader } from './misreads.ts';
import { shaftPath } from './shaftPath.ts';

/** What a disc is fitted from. */
export interface DiscInput {
  readonly head: HeadPlan;
  readonly understood: Understood;
  readonly ranked: RankedWiring;
  readonly marks: readonly MarkFact[];
  /** Column and thresholds of each channel as the drawing's program has them. */
  readonly drawn: Reader['channels'];
  readonly litIsHigh: readonly boolean[];
}

/** The disc with what each channel adds to it. */
export interface DiscResult {
  readonly disc: FittedDisc;
  readonly angles: FittedAngles;
  readonly edgeWidthsDeg: readonly (number | null)[];
}

function boreOf({ boreMm: [x, y], boreCorrelation }: FittedAngles, head: HeadPlan): FittedBore {
  const value = Math.hypot(x.value, y.value);
  const [cos, sin] = value > 0 ? [x.value / value, y.value / value] : [1, 0];
  const covariance = boreCorrelation * x.sigma * y.sigma;
  const along = cos * cos * x.sigma ** 2 + sin * sin * y.sigma ** 2 + 2 * cos * sin * covariance;
  const across = sin * sin * x.sigma ** 2 + cos * cos * y.sigma ** 2 - 2 * cos * sin * covariance;
  const towards = wrapDegrees(radToDeg(Math.atan2(y.value, x.value)));
  const radii = head.channels.map(({ radiusMm }) => radiusMm);
  const errorAt = (radius: number): number => radToDeg(Math.asin(Math.min(1, value / radius)));
  const { positions } = head.disc.code;
  return {
    offMm: { value, sigma: Math.sqrt(Math.max(0, along)) },
    patternTowardsDeg: towards,
    patternTowardsSigmaDeg: value > 0 ? Math.min(180, radToDeg(Math.sqrt(Math.max(0, across)) / value)) : 180,
    boreTowardsPosition: Math.floor((wrapDegrees(towards + 180) * positions) / 360) % positions,
    innermostDeg: errorAt(Math.min(...radii)),
    outermostDeg: errorAt(Math.max(...radii)),
  };
}

/** Reader by the table: the middle of where each word really stands. */
export function tableReader(
  wiring: RankedWiring['wiring'],
  columns: readonly ColumnLevels[],
  positions: readonly BuiltPosition[],
): Reader {
  const at = new Map(
    positions.filter(({ halfWidthDeg }) => halfWidthDeg > 0).map((row) => [row.word, row.centreDeg]),
  );
  return {
    channels: wiring.channels.map((wire) => {
      const { lowCounts, highCounts } = columns[wire!.column]!;
      return { column: wire!.column, lowCounts, highCounts, digitWhenHigh: wire!.inverted ? '0' : '1' };
    }),
    angleOf: (word) => at.get(word) ?? null,
  };
}

/** The disc as made; `null` where the hand never turned smoothly past three edges in a row. */
export function fittedDisc(input: DiscInput): DiscResult | null {
  const { head, understood, ranked, marks } = input;
  const { walk, recording, columns } = understood;
  const angles = fitAngles(walk, head, ranked.followed.crossings, marks);
  if (!angles) return null;
  const positions = builtTable(walk, angles, ranked.followed);
  const path = shaftPath(angles, ranked.followed.crossings, walk.boundaries.length);
  const widths = edgeWidths(ranked.wiring, angles.chains, recording.stretches, columns);
  const { windowLevel } = head.disc.spec;
  const interpolation = interpolationOf(
    angles,
    ranked.wiring,
    columns,
    recording.stretches,
    path,
    widths,
    windowLevel,
  );
  const stepDeg = 360 / walk.code.positions;
  const misreads = (reader: Reader) => misreadsOf(reader, recording.stretches, path, stepDeg);
  const steps = ranked.followed.travelled.reduce((sum, [up, down]) => sum + up + down, 0);
  const disc: FittedDisc = {
    bore: boreOf(angles, head),
    twiceDeg: twiceOf(angles),
    playDeg: angles.playDeg,
    edgeSdMm: angles.law.edgeSdMm,
    positions,
    missing: positions
      .filter(({ seen, halfWidthDeg }) => !seen || halfWidthDeg === 0)
      .map(({ position }) => position),
    neverEnding: positions.filter(isNeverEnding).map(({ position }) => position),
    tableError: tableError(positions),
    interpolation,
    byDrawing: misreads({ channels: input.drawn, angleOf: drawnAngles(walk.code.words) }),
    byTable: misreads(tableReader(ranked.wiring, columns, positions)),
    markOffsetDeg: angles.markOffsetDeg,
    turns: steps / walk.boundaries.length,
  };
  return { disc, angles, edgeWidthsDeg: widths };
}

function twiceOf({ twiceDeg: [cos, sin] }: FittedAngles) {
  return { value: Math.hypot(cos.value, sin.value), sigma: Math.max(cos.sigma, sin.sigma) };
}

/** Angle by which the middle of a position stands off where it is drawn. [deg] */
export function offDrawn({ centreDeg, position }: BuiltPosition, positions: number): number {
  return turnBetween(((position + 0.5) * 360) / positions, centreDeg);
}

/** Channels that are all there. */
export function isComplete(channels: readonly FittedChannel[]): boolean {
  return channels.every(({ column, undecided }) => column !== null && !undecided);
}
