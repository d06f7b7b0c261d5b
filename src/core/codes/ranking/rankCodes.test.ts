import { describe, expect, it } from 'vitest';
import { rankCodes, type CodeNeed, type RankedCode } from '../index.ts';

const QUICK = { seed: 1, mostSteps: 200_000 };

/** A printed disc of 80 mm with a 0.4 mm nozzle. */
const PRINTED: CodeNeed = {
  positions: 32,
  mustSurvivePowerLoss: true,
  turnsFully: true,
  mostChannels: 8,
  marks: 'light-dark',
  windowLevel: 1,
  innerRadiusMm: 12,
  outerRadiusMm: 38,
  webMm: 0.8,
  minWindowMm: 0.8,
  minLandMm: 0.8,
  minTrackWidthMm: 2,
  edgeSdMm: 0.1,
};

const rank = (change: Partial<CodeNeed>): RankedCode[] => rankCodes({ ...PRINTED, ...change }, QUICK);
const find = (list: readonly RankedCode[], title: string): RankedCode =>
  list.find((code) => code.title === title)!;
const texts = ({ reasons }: RankedCode): string => reasons.map(({ text }) => text).join(' ');

describe('the best code for a need', () => {
  it('is a single-step code of five sensors for 32 positions, and natural binary is a risk with its reason', () => {
    const list = rank({});
    expect(list[0]).toMatchObject({ verdict: 'fits', measures: { channels: 5, worstErrorPositions: 0 } });
    expect(list[0]!.name).toBe('long-run-gray');
    const binary = find(list, 'natural binary');
    expect(binary.verdict).toBe('risky');
    expect(binary.reasons[0]).toEqual({
      isGood: false,
      text: 'Stopped on a boundary it can show a direction 15 positions away (168.75°).',
    });
  });

  it('is one track for 360 positions, since nine tracks are too fine for the printer', () => {
    const list = rank({ positions: 360, mostChannels: 9, edgeSdMm: 0.05, minTrackWidthMm: 2.5 });
    expect(list[0]).toMatchObject({
      name: 'single-track-gray',
      verdict: 'fits',
      measures: { tracks: 1, channels: 9 },
    });
    expect(find(list, 'reflected Gray').verdict).toBe('does-not-fit');
    expect(texts(find(list, 'reflected Gray'))).toContain(
      '9 tracks would be 2.18 mm wide each; the process needs 2.5 mm.',
    );
  });

  it('counts only where a loss of power does not matter', () => {
    expect(find(rank({}), 'counting wheel with index').verdict).toBe('does-not-fit');
    const list = rank({ mustSurvivePowerLoss: false });
    expect(list[0]).toMatchObject({ name: 'counting-wheel', verdict: 'fits' });
    expect(texts(list[0]!)).toContain('after a loss of power the direction is unknown');
  });

  it('takes three colours where the sensors tell them, and only safe greys', () => {
    expect(find(rank({ positions: 26 }), 'three-colour').verdict).toBe('does-not-fit');
    expect(rank({ positions: 27, marks: 'colours' })[0]).toMatchObject({
      name: 'ternary-modular',
      verdict: 'fits',
    });
    const greys = rank({ positions: 26, marks: 'greys' });
    expect(greys[0]).toMatchObject({ name: 'ternary-reflected', verdict: 'fits' });
    expect(find(greys, 'three-colour')).toMatchObject({ verdict: 'does-not-fit' });
  });

  it('keeps codes with too many sensors out', () => {
    const list = rank({ mostChannels: 4 });
    expect(list.every(({ verdict }) => verdict === 'does-not-fit' || verdict === 'cannot')).toBe(true);
    expect(texts(list[0]!)).toMatch(/It takes \d+ light sensors; 4 are allowed/);
  });

  it('says of each code that cannot be made why, and what could', () => {
    const list = rank({ positions: 25 });
    const gray = find(list, 'reflected Gray');
    expect(gray).toMatchObject({ verdict: 'cannot', table: null, measures: null });
    expect(texts(gray)).toContain('an even number of times');
    expect(texts(gray)).toContain('24 or 26');
    expect(list.findIndex(({ verdict }) => verdict === 'cannot')).toBeGreaterThan(2);
  });

  it('lets an odd count be Gray where the shaft never passes the seam', () => {
    const gray = find(rank({ positions: 25, turnsFully: false }), 'reflected Gray');
    expect(gray).toMatchObject({ options: { seam: 'open' }, measures: { worstErrorPositions: 0 } });
    expect(gray.table!.words).toHaveLength(25);
  });

  it('gives bands of equal width, the finest outside', () => {
    const { measures } = find(rank({}), 'reflected Gray');
    // 38 - 12 less four webs of 0.8, in five: 4.56 mm; the outermost middle lies at 38 - 2.28.
    expect(measures!.trackWidthMm).toBeCloseTo(4.56, 9);
    expect(measures!.smallestMarkMm).toBeCloseTo((2 / 32) * 2 * Math.PI * (38 - 2.28), 9);
    expect(measures!.toleranceMm).toBeCloseTo((Math.PI / 32) * (12 + 2.28), 9);
  });

  it('is the same list every time, and no code is left out', () => {
    const names = (list: readonly RankedCode[]): string[] => list.map(({ title }) => title);
    expect(names(rank({}))).toEqual(names(rank({})));
    expect(rank({})).toHaveLength(14);
  });

  it('refuses a count that no disc can have', () => {
    expect(() => rank({ positions: 5000 })).toThrow('codes/count-out-of-range');
  });

  it('stops when told to', () => {
    const signal = { aborted: true };
    expect(() => rankCodes({ ...PRINTED, positions: 360 }, { ...QUICK, signal })).toThrow(
      'codes/search-cancelled',
    );
  });
});
