import { placeOf } from './discReadings.ts';

// Measures a drawing as a maker would, by looking at places on it. Shares no code with src.

/** True where there is material; x right, y up, axis at the origin. [mm] */
export type Looks = (x: number, y: number) => boolean;

/** A stretch along a circle or a radius, all material or all open. [deg or mm] */
export interface Run {
  readonly isMaterial: boolean;
  readonly from: number;
  readonly to: number;
}

/** Where a line of places changes, found by looking at steps and halving each step that changes. */
function changesAlong(
  looksAt: (place: number) => boolean,
  from: number,
  to: number,
  steps: number,
): number[] {
  const changes: number[] = [];
  const placeAt = (step: number) => from + ((to - from) * step) / steps;
  let before = looksAt(from);
  for (let step = 1; step <= steps; step++) {
    const after = looksAt(placeAt(step));
    if (after !== before) {
      let [low, high] = [placeAt(step - 1), placeAt(step)];
      while (high - low > 1e-7) {
        const middle = (low + high) / 2;
        if (looksAt(middle) === before) low = middle;
        else high = middle;
      }
      changes.push((low + high) / 2);
    }
    before = after;
  }
  return changes;
}

/** Runs round a circle; one of a whole turn where nothing changes. [deg] */
export function runsRound(looks: Looks, radiusMm: number): Run[] {
  const looksAt = (angle: number) => looks(...placeOf(angle, radiusMm));
  // Begun off the round angles, where an edge would lie just on the first place.
  const changes = changesAlong(looksAt, 0.0123, 360.0123, 7200);
  if (changes.length === 0) return [{ isMaterial: looksAt(0.0123), from: 0, to: 360 }];
  return changes.map((from, i) => {
    const to = changes[i + 1] ?? changes[0]! + 360;
    return { isMaterial: looksAt((from + to) / 2), from, to };
  });
}

/** Runs along a radius between two distances from the axis. [mm] */
export function runsOutward(looks: Looks, angleDeg: number, fromMm: number, toMm: number): Run[] {
  const looksAt = (radius: number) => looks(...placeOf(angleDeg, radius));
  const ends = [fromMm, ...changesAlong(looksAt, fromMm, toMm, Math.ceil((toMm - fromMm) / 0.1)), toMm];
  return ends.slice(1).map((to, i) => ({ isMaterial: looksAt((ends[i]! + to) / 2), from: ends[i]!, to }));
}

/** Pieces of material between two radii, by filling a fine raster from cell to cell. [-] */
export function pieceCount(looks: Looks, fromMm: number, toMm: number, cellMm: number): number {
  const rows = Math.ceil((toMm - fromMm) / cellMm);
  const columns = Math.ceil((2 * Math.PI * toMm) / cellMm);
  const unfilled = new Uint8Array(rows * columns);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const place = placeOf(
        ((column + 0.5) * 360) / columns,
        fromMm + ((row + 0.5) * (toMm - fromMm)) / rows,
      );
      unfilled[row * columns + column] = looks(...place) ? 1 : 0;
    }
  }
  let pieces = 0;
  for (let first = 0; first < unfilled.length; first++) {
    if (!unfilled[first]) continue;
    pieces++;
    const waiting = [first];
    unfilled[first] = 0;
    while (waiting.length > 0) {
      const cell = waiting.pop()!;
      const column = cell % columns;
      const start = cell - column;
      const beside = [start + ((column + 1) % columns), start + ((column + columns - 1) % columns)];
      for (const next of [...beside, cell - columns, cell + columns]) {
        if (next < 0 || next >= unfilled.length || !unfilled[next]) continue;
        unfilled[next] = 0;
        waiting.push(next);
      }
    }
  }
  return pieces;
}
