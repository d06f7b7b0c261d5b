import { describe, expect, it } from 'vitest';
import {
  builtBy,
  designOf,
  recordedText,
  turnedBy,
  twinFile,
  type TwinFaults,
} from '../../../test/support/fitTwin.ts';
import { draws } from '../../../test/support/handTurn.ts';
import {
  asBuiltChanges,
  certificateOf,
  certificatePage,
  fitRecording,
  readRecording,
  type Fit,
} from './index.ts';

const jetty = designOf(twinFile());
const OPTIONS = { recordedAt: '2024-05-17T10:30:00Z' };
const hand = (turns: number) => ({ turns, degPerS: 25, change: 0.3, phase: 1 });

/** Rows of a recorded turn, as words of what the inputs read. */
function words(faults: TwinFaults = {}, seed = 5): string[] {
  const random = draws(seed);
  const build = builtBy(jetty, { ...faults, random });
  const rows = recordedText(build, turnedBy(build, [hand(1.3)], 20), random)
    .split('\n')
    .slice(1);
  return rows.map((row) =>
    row
      .split(',')
      .slice(1)
      .map((counts) => (Number(counts) > 500 ? '1' : '0'))
      .join(''),
  );
}

const fitText = (text: string, name = 'turn_ccw.txt'): Fit =>
  fitRecording(
    jetty.instrument,
    jetty.disc,
    jetty.head,
    readRecording([{ name, text }], { channels: 5 }),
    OPTIONS,
  );

const columns = (fit: Fit): (number | null)[] => fit.channels.map(({ column }) => column);
const ungray = (word: string): number => {
  let value = parseInt(word, 2);
  for (let shift = value >> 1; shift > 0; shift >>= 1) value ^= shift;
  return value;
};

describe('words and numbers instead of counts', () => {
  const swapped: TwinFaults = { columns: [0, 1, 4, 3, 2] };

  it('tell the wires as well, but no thresholds', () => {
    const rows = words(swapped).map((word, i) => `${10 * i},${word}`);
    const fit = fitText(['ms,word', ...rows].join('\n'));
    expect(columns(fit)).toEqual([0, 1, 4, 3, 2]);
    expect(fit.asBuilt).toBeNull();
    expect(fit.reasons.join(' ')).toMatch(/no counts/);
  });

  it.each<[string, (word: string) => number, string]>([
    ['the word as a number', (word) => parseInt(word, 2), 'the word itself as a number'],
    ['a position, decoded from wrong words', ungray, 'the position of the word'],
  ])('are undone when they are %s', (_, number, what) => {
    const rows = words(swapped).map((word, i) => `${10 * i};${number(word)}`);
    const fit = fitText(['ms;value', ...rows].join('\n'));
    expect(fit.numbersWere).toBe(what);
    expect(columns(fit)).toEqual([0, 1, 4, 3, 2]);
  });

  it('explain a dump in which eight of ten lines always change together', () => {
    // Invented twin of a complaint: two inputs behave, the others float together.
    const big = designOf(twinFile({ positions: 1024, diameterMm: 600, accuracyDeg: 20 }));
    const inputs = Array.from({ length: 400 }, (_, i) => {
      const [a, b, rest] = [i % 40 < 20, i % 100 < 50, i % 160 < 80].map(Number);
      return [a, b, ...new Array<number>(8).fill(rest!)].join('');
    });
    const recording = readRecording([{ name: 'dump.txt', text: inputs.join('\n') }], { channels: 10 });
    const fit = fitRecording(big.instrument, big.disc, big.head, recording, OPTIONS);
    expect(fit.causes.filter(({ kind }) => kind === 'tied')).toHaveLength(7);
    expect(fit.verdict).toBe('no');
  });
});

describe('several files and a re-check', () => {
  const turn = (seed: number, faults: TwinFaults = {}): Fit => {
    const random = draws(seed);
    const build = builtBy(jetty, { ...faults, random: draws(1) });
    const files = [1.3, -1.3].map((turns) => ({
      name: turns > 0 ? 'up ccw.csv' : 'down cw.csv',
      text: recordedText(build, turnedBy(build, [hand(turns)], 20), random),
    }));
    const recording = readRecording(files, { channels: 5, scaleCounts: 1024 });
    return fitRecording(jetty.instrument, jetty.disc, jetty.head, recording, OPTIONS);
  };
  const first = turn(3, { edgeSdMm: 0.05 });

  it('find nothing that matters on the same build, and the same table name for the same recording', () => {
    expect(turn(3, { edgeSdMm: 0.05 }).asBuilt!.tableHash).toBe(first.asBuilt!.tableHash);
    const changes = asBuiltChanges(first.asBuilt!, turn(4, { edgeSdMm: 0.05 }).asBuilt!);
    expect(changes.filter(({ matters }) => matters)).toEqual([]);
  });

  it('find a lamp that has aged and wires that were moved', () => {
    const later = turn(4, { edgeSdMm: 0.05, litCounts: { 2: 700 }, columns: [1, 0, 2, 3, 4] });
    const told = asBuiltChanges(first.asBuilt!, later.asBuilt!).filter(({ matters }) => matters);
    expect(told.map(({ where }) => where)).toEqual(
      expect.arrayContaining(['channel 0', 'channel 1', 'channel 2']),
    );
  });

  it('make a certificate that prints what it found and nothing of the maker as markup', () => {
    const certificate = certificateOf(first, { ...jetty.instrument, name: '<script>x</script>' });
    const page = certificatePage(certificate, first);
    expect(page).not.toContain('<script>');
    expect(page).toContain(first.asBuilt!.tableHash);
    expect(page.match(/<svg/g)).toHaveLength(3);
    expect(certificate.passes).toBe(true);
    expect(certificate.rows.filter(({ passes }) => passes === false)).toEqual([]);
  });
});

describe('reading between the edges', () => {
  it('is offered with its gain where edges are soft, and follows a slit as a straight line', () => {
    const random = draws(8);
    const build = builtBy(jetty, { random, noiseCounts: 1 });
    const text = recordedText(build, turnedBy(build, [hand(2.2)], 20), random);
    const { interpolation } = fitText(text).disc!;
    expect(interpolation.isOffered).toBe(true);
    expect(interpolation.gain).toBeGreaterThan(0.15);
    for (const curve of interpolation.curves) {
      expect(curve!.places).toHaveLength(9);
      for (const [k, place] of curve!.places.entries()) expect(Math.abs(place - k / 8)).toBeLessThan(0.12);
    }
  });

  it('is not offered where edges pass between two samples', () => {
    const random = draws(8);
    const build = { ...builtBy(jetty, { random }), slitMm: 0.02 };
    const text = recordedText(build, turnedBy(build, [hand(2.2)], 20), random);
    const { disc, asBuilt } = fitText(text);
    expect(disc!.interpolation.isOffered).toBe(false);
    expect(asBuilt!.channels.every(({ edgeCurve }) => edgeCurve === null)).toBe(true);
  });
});

describe('what cannot be taken at all', () => {
  const text = words()
    .map((word, i) => `${10 * i},${word}`)
    .join('\n');
  const recording = readRecording([{ name: 'x.csv', text }], { channels: 5 });

  it('is a disc of three colours', () => {
    const tracks = jetty.code.tracks.map((track) => ({ ...track, levelCount: 3 as const }));
    const disc = { ...jetty.disc, code: { ...jetty.code, tracks } };
    expect(() => fitRecording(jetty.instrument, disc, jetty.head, recording, OPTIONS)).toThrow(
      'fit/three-levels',
    );
  });

  it('is a recording wider than any head', () => {
    const wide = { ...recording, columns: Array.from({ length: 40 }, (_, c) => `a${c}`) };
    expect(() => fitRecording(jetty.instrument, jetty.disc, jetty.head, wide, OPTIONS)).toThrow(
      'fit/too-many-columns',
    );
  });
});
