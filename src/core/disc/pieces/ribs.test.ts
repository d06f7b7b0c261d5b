import { describe, expect, it } from 'vitest';
import { jettyDisc, noNotch } from '../../../../test/support/discSpecs.ts';
import { buildCode } from '../../codes/index.ts';
import { degToRad } from '../../units/index.ts';
import type { DiscPlan } from '../discPlan.ts';
import type { DiscSpec } from '../discSpec.ts';
import { layTracks } from '../layout/layTracks.ts';
import { loosePieces } from './lands.ts';
import { materialGrid } from './materialGrid.ts';
import { pieceLabels } from './pieces.ts';
import { holdPieces } from './ribs.ts';

function planOf(positions: number, changes: Partial<DiscSpec>, family = 'reflected-gray'): DiscPlan {
  const code = buildCode(family, positions);
  const spec = { ...jettyDisc, webMm: 0, rimMm: 0, notch: noNotch, ...changes };
  return { code, spec, tracks: layTracks(code, spec), ribs: [] };
}

function looseCount(plan: DiscPlan): number {
  const grid = materialGrid(plan);
  return loosePieces(plan, grid, pieceLabels(grid)).length;
}

describe('ribs', () => {
  it('are not added where nothing is loose', () => {
    expect(holdPieces(planOf(32, { rimMm: 2 })).plan.ribs).toEqual([]);
  });

  it.each([
    [16, 80],
    [32, 100],
    [64, 160],
    [128, 160],
  ])(
    'hold every piece of a Gray disc without web and rim: %i positions on %i mm',
    (positions, diameterMm) => {
      const plan = planOf(positions, { diameterMm });
      expect(looseCount(plan)).toBeGreaterThan(0);
      const holding = holdPieces(plan);
      expect(holding.loose).toEqual([]);
      expect(looseCount(holding.plan)).toBe(0);
    },
  );

  it('lie along the edges of tracks, clear of the middle half where the sensor looks', () => {
    const { plan } = holdPieces(planOf(32, {}));
    expect(plan.ribs.length).toBeGreaterThan(0);
    for (const rib of plan.ribs) {
      const track = plan.tracks.find(
        ({ innerRadiusMm, outerRadiusMm }) =>
          innerRadiusMm <= rib.innerRadiusMm && rib.outerRadiusMm <= outerRadiusMm,
      )!;
      const quarter = (track.outerRadiusMm - track.innerRadiusMm) / 4;
      const isClear =
        rib.outerRadiusMm <= track.midRadiusMm - quarter || rib.innerRadiusMm >= track.midRadiusMm + quarter;
      expect(isClear).toBe(true);
    }
  });

  it('lie inside the windows they cross, and do not overlap', () => {
    const { plan } = holdPieces(planOf(128, { diameterMm: 160 }));
    const inside = plan.ribs.map((rib) =>
      plan.tracks
        .flatMap(({ windows }) => windows)
        .filter(
          (window) =>
            window.innerRadiusMm <= rib.innerRadiusMm &&
            rib.outerRadiusMm <= window.outerRadiusMm &&
            [0, 360].some(
              (turn) =>
                rib.fromDeg + turn >= window.fromDeg - 1e-9 && rib.toDeg + turn <= window.toDeg + 1e-9,
            ),
        ),
    );
    expect(inside.every((windows) => windows.length === 1)).toBe(true);
    const shared = plan.ribs.filter((rib, i) =>
      plan.ribs.some(
        (other, j) =>
          j > i &&
          other.innerRadiusMm < rib.outerRadiusMm &&
          rib.innerRadiusMm < other.outerRadiusMm &&
          other.fromDeg < rib.toDeg - 1e-9 &&
          rib.fromDeg < other.toDeg - 1e-9,
      ),
    );
    expect(shared).toEqual([]);
  });

  it('are refused with their length where the nearest held material is too far', () => {
    const process = { ...jettyDisc.process, minWebMm: 0.3, minLandMm: 0.3, windowGrowthMm: 0 };
    const { loose } = holdPieces(planOf(16, { process, diameterMm: 200 }));
    expect(loose.length).toBeGreaterThan(0);
    const { refusal } = loose.find(({ piece }) => piece.lands.every(({ track }) => track.track === 3))!;
    // Gray of 16: held material begins one step, 22.5 degrees, beyond the loose land.
    expect(refusal).toMatchObject({ reason: 'too-far', longestMm: 6 });
    const inner = planOf(16, { process, diameterMm: 200 }).tracks[3]!.innerRadiusMm;
    expect(refusal.reason === 'too-far' && refusal.lengthMm).toBeCloseTo(degToRad(22.5) * inner, 9);
  });

  it('are refused where a track is too narrow to hold one clear of its middle', () => {
    const { loose } = holdPieces(planOf(32, { diameterMm: 40, hubDiameterMm: 20 }));
    expect(loose[0]!.refusal).toEqual({ reason: 'no-room', bandMm: 2, widthMm: 0.8 });
  });
});
