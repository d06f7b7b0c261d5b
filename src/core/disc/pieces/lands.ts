import type { Degrees } from '../../units/index.ts';
import type { DiscPlan, TrackPlan } from '../discPlan.ts';
import { HELD } from './pieces.ts';
import { columnFrom, isWholeRing, rowFrom, type PolarGrid } from './polarGrid.ts';

/** A land of a track between two of its windows. */
export interface Land {
  readonly track: TrackPlan;
  readonly fromDeg: Degrees;
  readonly toDeg: Degrees;
  /** Index of the window before it and of the one after it, clockwise; the same where the track has only one. */
  readonly before: number;
  readonly after: number;
}

/** Lands of a track in order; none where the track is one window or has no window. n ≥ 0 */
export function landsOf(track: TrackPlan): Land[] {
  const { windows } = track;
  if (windows.length === 0 || isWholeRing(windows[0]!)) return [];
  return windows.map((window, before) => {
    const after = (before + 1) % windows.length;
    const fromDeg = window.toDeg % 360;
    const next = windows[after]!.fromDeg;
    return { track, fromDeg, toDeg: next > fromDeg ? next : next + 360, before, after };
  });
}

/** Label of the piece a land belongs to. */
export function labelOfLand(land: Land, grid: PolarGrid, labels: Int32Array): number {
  const row = rowFrom(grid, land.track.innerRadiusMm);
  return labels[row * grid.anglesDeg.length + columnFrom(grid, land.fromDeg)]!;
}

/** A piece of the disc that would fall out. */
export interface LoosePiece {
  readonly label: number;
  /** Lands it is made of; none where a whole ring comes loose without one. */
  readonly lands: readonly Land[];
}

/**
 * Pieces that nothing joins to the hub.
 *
 * @param plan - A disc plan.
 * @param grid - Its material.
 * @param labels - Piece of each cell.
 * @returns Pieces in the order of their lowest cell, n ≥ 0.
 */
export function loosePieces(plan: DiscPlan, grid: PolarGrid, labels: Int32Array): LoosePiece[] {
  const landsByLabel = new Map<number, Land[]>();
  for (const label of labels) if (label > HELD && !landsByLabel.has(label)) landsByLabel.set(label, []);
  for (const track of plan.tracks) {
    for (const land of landsOf(track)) landsByLabel.get(labelOfLand(land, grid, labels))?.push(land);
  }
  return [...landsByLabel].sort(([a], [b]) => a - b).map(([label, lands]) => ({ label, lands }));
}
