import { describe, expect, it } from 'vitest';
import { jettyDisc, noNotch } from '../../../../test/support/discSpecs.ts';
import { buildCode, trackFromCells, type Level } from '../../codes/index.ts';
import { layTracks } from './layTracks.ts';
import { notchSector } from './notchSector.ts';
import { isWindow, stretchesWhere } from './windows.ts';

const windowsOf = (cells: Level[], windowLevel: 0 | 1 = 1) =>
  stretchesWhere(trackFromCells(cells, 3), (level) => isWindow(level, { windowLevel }));

describe('the windows of a track', () => {
  it('are none where no level lets light through', () => {
    expect(windowsOf([0, 0, 0, 0])).toEqual([]);
  });

  it('are one whole turn where every level does', () => {
    expect(windowsOf([1, 1, 1, 1])).toEqual([{ fromDeg: 0, toDeg: 360 }]);
  });

  it('run across the index mark in one piece', () => {
    expect(windowsOf([1, 0, 0, 1])).toEqual([{ fromDeg: 270, toDeg: 450 }]);
  });

  it('end where the turn ends', () => {
    expect(windowsOf([0, 0, 0, 1])).toEqual([{ fromDeg: 270, toDeg: 360 }]);
  });

  it('swap with the lands when the other level lets light through', () => {
    expect(windowsOf([1, 0, 0, 1], 0)).toEqual([{ fromDeg: 90, toDeg: 270 }]);
  });

  it('join where neighbouring levels both pass', () => {
    const track = trackFromCells([0, 1, 2, 0], 3);
    expect(stretchesWhere(track, (level) => level > 0)).toEqual([{ fromDeg: 90, toDeg: 270 }]);
  });
});

describe('the tracks of a disc', () => {
  const gray8 = buildCode('reflected-gray', 8);
  // Hub radius 10, outer edge of the tracks 30, two webs of 1: three bands of (20 - 2) / 3 = 6.
  const spec = { ...jettyDisc, diameterMm: 64, hubDiameterMm: 20, rimMm: 2, webMm: 1 };

  it('share the room between hub and rim equally, less the webs', () => {
    const radii = layTracks(gray8, spec).map((track) => [
      track.innerRadiusMm,
      track.midRadiusMm,
      track.outerRadiusMm,
    ]);
    expect(radii).toEqual([
      [10, 13, 16],
      [17, 20, 23],
      [24, 27, 30],
    ]);
  });

  it('lie the other way round when the finest is wanted inside', () => {
    const radii = layTracks(gray8, { ...spec, finest: 'inside' }).map((track) => track.innerRadiusMm);
    expect(radii).toEqual([24, 17, 10]);
  });

  it('meet at one radius to the last bit when there is no web', () => {
    const tracks = layTracks(buildCode('reflected-gray', 128), { ...spec, webMm: 0 });
    for (let track = 1; track < tracks.length; track++) {
      expect(tracks[track]!.innerRadiusMm).toBe(tracks[track - 1]!.outerRadiusMm);
    }
  });

  it('carry the windows of the code', () => {
    // Gray of 8: the middle bit is 1 in words 010, 011, 111, 110, positions 2 to 5.
    expect(layTracks(gray8, spec)[1]!.windows).toEqual([
      { innerRadiusMm: 17, outerRadiusMm: 23, fromDeg: 90, toDeg: 270 },
    ]);
  });
});

describe('the index notch', () => {
  it('is as wide as asked, straight across at the rim', () => {
    const notch = notchSector({ ...jettyDisc, diameterMm: 80, notch: { widthMm: 40, depthMm: 1 } })!;
    // A chord of half the diameter spans 60 degrees.
    expect(notch.fromDeg).toBeCloseTo(330, 12);
    expect(notch.toDeg).toBeCloseTo(390, 12);
    expect([notch.innerRadiusMm, notch.outerRadiusMm]).toEqual([39, 40]);
  });

  it('is left out at width 0', () => {
    expect(notchSector({ ...jettyDisc, notch: noNotch })).toBeNull();
  });
});
