import { describe, expect, it } from 'vitest';
import { jettyDisc, noNotch } from '../../../../test/support/discSpecs.ts';
import { buildCode, codeTable, trackFromCells } from '../../codes/index.ts';
import type { DiscPlan } from '../discPlan.ts';
import type { DiscSpec, RingSector } from '../discSpec.ts';
import { layTracks } from '../layout/layTracks.ts';
import { loosePieces } from './lands.ts';
import { materialGrid } from './materialGrid.ts';
import { pieceLabels } from './pieces.ts';
import { polarGrid } from './polarGrid.ts';

const window = (inner: number, outer: number, fromDeg: number, toDeg: number): RingSector => ({
  innerRadiusMm: inner,
  outerRadiusMm: outer,
  fromDeg,
  toDeg,
});
const ring = { innerRadiusMm: 1, outerRadiusMm: 4 };
const pieceCount = (openings: RingSector[], fillings: RingSector[] = []) =>
  new Set([...pieceLabels(polarGrid(ring, openings, fillings))].filter((label) => label >= 0)).size;

function planOf(family: string, positions: number, changes: Partial<DiscSpec>): DiscPlan {
  const code = buildCode(family, positions);
  const spec = { ...jettyDisc, diameterMm: 200, webMm: 0, rimMm: 0, notch: noNotch, ...changes };
  return { code, spec, tracks: layTracks(code, spec), ribs: [] };
}

function looseCount(plan: DiscPlan): number {
  const grid = materialGrid(plan);
  return loosePieces(plan, grid, pieceLabels(grid)).length;
}

describe('the pieces of a ring', () => {
  it('are one where nothing is cut', () => {
    expect(pieceCount([])).toBe(1);
  });

  it('are two where a whole turn is cut', () => {
    expect(pieceCount([window(2, 3, 40, 400)])).toBe(2);
  });

  it('stay one where the cut leaves a land', () => {
    expect(pieceCount([window(2, 3, 0, 350)])).toBe(1);
  });

  it('are held by an edge, not by a corner', () => {
    // A land above a window, held at its side; then only at the corner where the two windows meet.
    const below = window(2, 3, 0, 180);
    expect(pieceCount([below, window(3, 4, 90, 360)])).toBe(1 + 1);
    expect(pieceCount([below, window(3, 4, 91, 359)])).toBe(1);
    expect(pieceCount([below, window(3, 4, 180, 360)])).toBe(1 + 1);
  });

  it('are joined by a filling', () => {
    expect(pieceCount([window(2, 3, 0, 360)], [window(2, 3, 10, 11)])).toBe(1);
  });

  it('take edges a hair apart as one edge', () => {
    const hair = 1e-12;
    expect(polarGrid(ring, [window(2, 3, 0, 90), window(3, 4, 90 + hair, 180)], []).anglesDeg).toEqual([
      0, 90, 180,
    ]);
    expect(polarGrid(ring, [window(2, 3, 90, 360 - hair)], []).anglesDeg).toEqual([0, 90]);
  });
});

describe('the loose pieces of a disc cut through, without web and rim', () => {
  // Derived: every land of a track n above a window that spans it falls out; half of the finest lands do, and with
  // plain counting all but the one that reaches into the last half.
  it.each([4, 5, 6, 8])('are 2^(n-2) - 1 for Gray with its 1 cut, n = %i', (n) => {
    expect(looseCount(planOf('reflected-gray', 2 ** n, { windowLevel: 1 }))).toBe(2 ** (n - 2) - 1);
  });

  it.each([4, 5, 6, 8])('are none for Gray with its 0 cut, n = %i', (n) => {
    expect(looseCount(planOf('reflected-gray', 2 ** n, { windowLevel: 0 }))).toBe(0);
  });

  it.each([4, 5, 6])('are 2^(n-1) - 1 for plain counting, n = %i', (n) => {
    expect(looseCount(planOf('natural-binary', 2 ** n, { windowLevel: 1 }))).toBe(2 ** (n - 1) - 1);
    expect(looseCount(planOf('natural-binary', 2 ** n, { windowLevel: 0 }))).toBe(2 ** (n - 1) - 1);
  });

  it.each(['reflected-gray', 'natural-binary'])('are none with a rim, %s', (family) => {
    expect(looseCount(planOf(family, 32, { rimMm: 2 }))).toBe(0);
  });

  it.each(['reflected-gray', 'natural-binary'])(
    'are none with webs and rim, whichever level is cut, %s',
    (family) => {
      for (const windowLevel of [0, 1] as const) {
        expect(looseCount(planOf(family, 64, { webMm: 1, rimMm: 2, windowLevel }))).toBe(0);
      }
    },
  );

  it('are named with track and angles', () => {
    const plan = planOf('reflected-gray', 16, {});
    const grid = materialGrid(plan);
    const places = loosePieces(plan, grid, pieceLabels(grid)).map(({ lands }) =>
      lands.map(({ track, fromDeg, toDeg }) => [track.track, fromDeg, toDeg]),
    );
    // Gray of 16, finest track 0110 0110 ...: lands at positions 15-0, 3-4, 7-8, 11-12; the track below is cut at 2-5
    // and 10-13, so that the lands at 3-4 and 11-12 hang on nothing; so does the third track's land between.
    expect(places.flat()).toContainEqual([3, 67.5, 112.5]);
    expect(places.flat()).toContainEqual([3, 247.5, 292.5]);
  });

  it('are a ring where a track is one window all the way round', () => {
    const tracks = [trackFromCells([1, 1]), trackFromCells([0, 1])];
    const code = codeTable('by hand', 2, { tracks, channels: [{ track: 1, angleDeg: 0 }] });
    const spec = { ...jettyDisc, rimMm: 2.4 };
    const plan = { code, spec, tracks: layTracks(code, spec), ribs: [] };
    const grid = materialGrid(plan);
    const pieces = loosePieces(plan, grid, pieceLabels(grid));
    expect(pieces).toHaveLength(1);
    expect(pieces[0]!.lands.map(({ track }) => track.track)).toEqual([1]);
  });
});
