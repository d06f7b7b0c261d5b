import { describe, expect, it } from 'vitest';
import { readInstrument, startingFile } from '../../instrument/index.ts';
import { readingWidths } from './readingWidths.ts';

const { instrument } = readInstrument(startingFile('vane'), 'vane.yaml');

describe('what a reading covers', () => {
  it('is half a step as drawn, at every position and nowhere else', () => {
    const known = { ...instrument, need: { ...instrument.need, positions: 8 }, asBuilt: null };
    const { halfWidthOf, leastDeg, mostDeg, source } = readingWidths({
      ...known,
      site: { ...known.site, northOffsetDeg: 0 },
    });
    expect([22.5, 67.5, 337.5].map(halfWidthOf)).toEqual([22.5, 22.5, 22.5]);
    expect(halfWidthOf(22.55)).toBe(22.5); // logged to one decimal
    expect(halfWidthOf(30)).toBe(0);
    expect([leastDeg, mostDeg, source]).toEqual([22.5, 22.5, 'drawn']);
  });

  it('is what the recorded turn found, turned to every north that was ever set', () => {
    const positions = [
      { word: '00', centreDeg: 40, halfWidthDeg: 44 },
      { word: '01', centreDeg: 133, halfWidthDeg: 47 },
    ];
    const asBuilt = { recordedAt: '', tableHash: '', channels: [], sense: 'same' as const, positions };
    const setting = { since: '2026-01-01', offsetDeg: 0, sigmaDeg: 1, by: 'sun' };
    const { halfWidthOf, mostDeg } = readingWidths({
      ...instrument,
      head: { ...instrument.head, patternedFace: 'down' },
      site: { ...instrument.site, northOffsetDeg: 10, northHistory: [setting] },
      asBuilt,
    });
    expect([40, 50, 133, 143, 60].map(halfWidthOf)).toEqual([44, 44, 47, 47, 0]);
    expect(mostDeg).toBe(47);
  });
});
