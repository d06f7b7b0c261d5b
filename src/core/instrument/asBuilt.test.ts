import { crc32 } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { VanewrightError, type Problem } from '../error/index.ts';
import { asBuiltHash, readInstrument, type AsBuilt } from './index.ts';

const channel = (pin: string) => ({
  pin,
  litCounts: 930,
  darkCounts: 93,
  lowCounts: 479,
  highCounts: 544,
  litIsHigh: true,
});

const built = {
  recordedAt: '2024-05-17T10:30:00Z',
  tableHash: '00000000',
  channels: [channel('A0'), { ...channel('A2'), edgeCurve: [0, 0.4, 1], edgeWidthDeg: 3.4 }],
  sense: 'reversed',
  positions: [
    { word: '00', centreDeg: 40.5, halfWidthDeg: 44 },
    { word: '01', centreDeg: 133, halfWidthDeg: 46.25 },
    { word: '11', centreDeg: 224, halfWidthDeg: 45 },
  ],
};

type Change = Record<string, unknown>;

function read(change: Change = {}): AsBuilt | null {
  const file = {
    vanewright: 1,
    name: 'jetty',
    need: { positions: 4 },
    disc: { diameterMm: 84, process: { kind: 'fdm' } },
    asBuilt: { ...built, ...change },
  };
  return readInstrument(JSON.stringify(file), 'f.yaml').instrument.asBuilt;
}

function problems(change: Change): readonly Problem[] {
  try {
    read(change);
  } catch (error) {
    if (error instanceof VanewrightError) return error.problems;
    throw error;
  }
  return [];
}

describe('the as-built section', () => {
  it('comes out as it went in, with nothing interpolated where no curve is given', () => {
    const [first, second] = read()!.channels;
    expect(read()).toMatchObject({ ...built, channels: [channel('A0'), built.channels[1]] });
    expect([first!.edgeCurve, first!.edgeWidthDeg]).toEqual([null, null]);
    expect(second!.edgeCurve).toEqual([0, 0.4, 1]);
  });

  it.each<[string, Change]>([
    ['instrument/bad-instant', { recordedAt: '2024-02-30T10:00:00Z' }],
    ['instrument/bad-instant', { recordedAt: '17.5.2024' }],
    ['instrument/as-built-levels', { channels: [channel('A0'), { ...channel('A1'), lowCounts: 544 }] }],
    ['instrument/as-built-levels', { channels: [channel('A0'), { ...channel('A1'), litIsHigh: false }] }],
    ['instrument/edge-curve', { channels: [channel('A0'), { ...channel('A1'), edgeCurve: [0, 1] }] }],
    ['instrument/edge-curve', { channels: [channel('A0'), { ...channel('A1'), edgeWidthDeg: 2 }] }],
    [
      'instrument/edge-curve',
      { channels: [channel('A0'), { ...channel('A1'), edgeCurve: [0, 0.6, 0.5, 1], edgeWidthDeg: 2 }] },
    ],
    [
      'instrument/as-built-words',
      { positions: [...built.positions, { ...built.positions[0]!, centreDeg: 300 }] },
    ],
    [
      'instrument/as-built-words',
      { positions: [...built.positions, { word: '1', centreDeg: 300, halfWidthDeg: 45 }] },
    ],
    [
      'instrument/as-built-words',
      { positions: [...built.positions, { word: '1x', centreDeg: 300, halfWidthDeg: 45 }] },
    ],
    ['instrument/wrong-length', { positions: [] }],
    [
      'instrument/out-of-range',
      { positions: [...built.positions, { word: '10', centreDeg: 360, halfWidthDeg: 45 }] },
    ],
  ])('is refused with %s', (code, change) => {
    expect(problems(change).map((problem) => problem.code)).toEqual([code]);
  });

  it('has the same short name for the same table, whenever it was recorded, and another for any other', () => {
    const first = asBuiltHash(read()!);
    expect(asBuiltHash(read({ recordedAt: '2025-01-01T00:00:00Z', tableHash: 'x' })!)).toBe(first);
    const others: Change[] = [
      { sense: 'same' },
      { channels: [channel('A1'), built.channels[1]] },
      { positions: built.positions.slice(1) },
      { positions: [...built.positions.slice(0, 2), { ...built.positions[2]!, centreDeg: 224.001 }] },
    ];
    expect(new Set([first, ...others.map((change) => asBuiltHash(read(change)!))]).size).toBe(5);
  });

  it('is named by the check value that another program gives for the same rows', () => {
    const rows =
      'reversed\nA0 479 544 1\nA2 479 544 1\n00 40.500 44.000\n01 133.000 46.250\n11 224.000 45.000';
    expect(asBuiltHash(read()!)).toBe((crc32(rows) >>> 0).toString(16).padStart(8, '0'));
  });
});
