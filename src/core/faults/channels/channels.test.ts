import { describe, expect, it } from 'vitest';
import { buildCode } from '../../codes/index.ts';
import { findFaults, type FaultSample } from '../index.ts';

const code = buildCode('reflected-gray', 20);
const setting = { code, windowLevel: 1, lights: [], limitDegPerS: 1000, hasCups: true, place: null } as const;

/** Samples a minute apart with these words. */
function samplesOf(count: number, speedMPerS: number, word: (i: number) => string): FaultSample[] {
  return Array.from({ length: count }, (_, i) => ({
    atMs: 60_000 * (i + 1),
    headingDeg: null,
    speedMPerS,
    flags: 0,
    word: word(i),
    pulses: null,
    edges: null,
    stream: 1,
    line: i + 1,
  }));
}

describe('a channel', () => {
  it('that flickers on an edge while nothing moves is named with that edge', () => {
    const samples = samplesOf(120, 0, (i) => code.words[7 + (i % 2)]!);
    const [chatter, ...more] = findFaults(samples, setting);
    expect(more).toEqual([]);
    expect(chatter).toMatchObject({ kind: 'chatter', positions: [7, 8] });
    const differs = [...code.words[7]!].findIndex((level, c) => level !== code.words[8]![c]);
    expect(chatter!.channels).toEqual([differs]);
  });

  it('that makes words the disc does not have is blamed for them', () => {
    const position = (i: number): number => Math.floor(i / 3) % 20;
    const turned = (word: string, c: number): string =>
      word.slice(0, c) + (word[c] === '0' ? '1' : '0') + word.slice(c + 1);
    // The channel whose turning round makes illegal words most often on a disc of 20 of 32 words.
    const illegal = code.channels.map(
      (_, c) => code.words.filter((word) => code.positionOf(turned(word, c)) === null).length,
    );
    const bad = illegal.indexOf(Math.max(...illegal));
    const samples = samplesOf(900, 5, (i) => {
      const word = code.words[position(i)]!;
      return i > 400 && i % 3 === 1 ? turned(word, bad) : word;
    });
    const found = findFaults(samples, setting).find(({ kind }) => kind === 'illegal-words');
    expect(found!.channels[0]).toBe(bad);
    expect(found!.spoils).toBe('heading');
    expect(found!.noticedMs).toBeGreaterThan(400 * 60_000);
  });
});

it('is empty for an empty record and for one sample', () => {
  expect(findFaults([], setting)).toEqual([]);
  expect(
    findFaults(
      samplesOf(1, 5, () => code.words[0]!),
      setting,
    ),
  ).toEqual([]);
});
