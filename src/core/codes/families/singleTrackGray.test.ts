import { describe, expect, it } from 'vitest';
import { buildCode, codeProblems, codeProperties } from '../index.ts';

const QUICK = { seed: 1, mostSteps: 200_000 };

describe('one track for all channels', () => {
  it('takes the fewest channels that serve the count', () => {
    const fewest = [30, 36, 60, 64, 72, 90, 100, 126, 128, 180, 240, 360].map((positions) => {
      const { channels } = buildCode('single-track-gray', positions, {}, { seed: 1, mostSteps: 20_000 });
      return channels.length;
    });
    expect(fewest).toEqual([5, 6, 6, 8, 9, 9, 10, 7, 8, 9, 8, 9]);
  });

  it('keeps all heads within half a turn where asked', () => {
    const { channels } = buildCode('single-track-gray', 126, { headPlacement: 'half-turn' }, QUICK);
    expect(channels.map(({ angleDeg }) => angleDeg)).toEqual([0, 1, 2, 3, 4, 5, 6].map((c) => (c * 180) / 7));
  });

  it('reads its own opposite half a turn on where the heads stand within half a turn', () => {
    const { words } = buildCode('single-track-gray', 60, { headPlacement: 'half-turn' }, QUICK);
    const opposite = (word: string): string => [...word].map((level) => (level === '0' ? '1' : '0')).join('');
    expect(words.slice(30)).toEqual(words.slice(0, 30).map(opposite));
  });

  it('gives the same disc for the same seed', () => {
    const twice = [1, 2].map(() => buildCode('single-track-gray', 240, {}, QUICK).words);
    expect(twice[0]).toEqual(twice[1]);
  });

  it('tells whether longer marks are ruled out or were not found in time', () => {
    expect(buildCode('single-track-gray', 30, {}, QUICK).search).toMatchObject({ provedBest: true });
    expect(buildCode('single-track-gray', 360, {}, QUICK).search).toEqual({
      steps: 200_000,
      provedBest: false,
    });
  });
});

describe('a count one track cannot show', () => {
  it.each([
    [7, 2, 'a multiple of 4', '4'],
    [25, 5, 'a multiple of 10', '20 or 30'],
    [40, 5, '30 is the most', '30'],
    [16, 4, 'power of two', '8'],
    [1000, 10, 'take turns', '980 or 1020'],
  ])(
    'refuses %i on %i channels with the reason and the nearest counts',
    (positions, channels, reason, nearest) => {
      const [problem] = codeProblems('single-track-gray', positions, { channels });
      expect(problem).toMatchObject({ code: 'codes/no-single-track', where: 'need.positions' });
      expect(problem!.what).toContain(reason);
      expect(problem!.allowed).toBe(`${nearest} positions`);
    },
  );

  it('names the channels that would serve', () => {
    const [problem] = codeProblems('single-track-gray', 60, { channels: 5 });
    expect(problem!.fix).toBe('Set disc.codeOptions.channels to 6.');
  });

  it('refuses an odd count whatever the channels', () => {
    const [problem] = codeProblems('single-track-gray', 45);
    // 46 = 2 * 23 would need 1 or 23 channels; 44 serves with 11, 48 with 6.
    expect(problem!.allowed).toBe('44 or 48 positions');
  });

  it.each([0, 17, 2.5, Number.NaN])('refuses %d channels', (channels) => {
    const [problem] = codeProblems('single-track-gray', 30, { channels });
    expect(problem).toMatchObject({
      code: 'codes/channels-out-of-range',
      where: 'disc.codeOptions.channels',
    });
  });

  it('says that it ran out of steps when it did', () => {
    expect(() => buildCode('single-track-gray', 2046, {}, { seed: 1, mostSteps: 100 })).toThrow(
      'codes/search-ran-out',
    );
  });

  it('refuses an option that this code does not have', () => {
    const [problem] = codeProblems('single-track-gray', 30, { clockTrack: true });
    expect(problem).toMatchObject({
      code: 'codes/option-not-for-this-code',
      where: 'disc.codeOptions.clockTrack',
      allowed: 'channels, headPlacement, leastMarkSteps for single-track-gray',
    });
  });
});

describe('marks of a length asked for', () => {
  it('are found without looking for longer ones', () => {
    const table = buildCode('single-track-gray', 360, { leastMarkSteps: 6 }, QUICK);
    expect(codeProperties(table).shortestRunSteps).toBeGreaterThanOrEqual(6);
    expect(table.search!.steps).toBeLessThan(QUICK.mostSteps);
    expect(table.search!.provedBest).toBe(false);
  });

  it.each([
    ['single-track-gray', 30, 4],
    ['single-track-gray', 126, 6],
    ['long-run-gray', 32, 5],
    ['long-run-gray', 16, 3],
  ])('are proved not to exist: %s, %i positions, %i steps', (name, positions, leastMarkSteps) => {
    const attempt = (): unknown =>
      buildCode(name, positions, { leastMarkSteps }, { seed: 1, mostSteps: 1_000_000 });
    expect(attempt).toThrow('codes/no-such-code');
    expect(attempt).toThrow('it is proved that there is no such code');
  });

  it('are not known to exist or not when the steps ran out', () => {
    expect(() => buildCode('single-track-gray', 360, { leastMarkSteps: 8 }, QUICK)).toThrow(
      'codes/search-ran-out',
    );
    expect(() => buildCode('long-run-gray', 360, { leastMarkSteps: 9 }, QUICK)).toThrow(
      'codes/search-ran-out',
    );
  });

  it('are refused where no code of so many channels has them', () => {
    for (const [name, channels] of [
      ['single-track-gray', 5],
      ['long-run-gray', 5],
    ] as const) {
      const [problem] = codeProblems(name, 30, { leastMarkSteps: 6 });
      expect(problem).toMatchObject({
        code: 'codes/mark-too-long',
        where: 'disc.codeOptions.leastMarkSteps',
      });
      expect(problem!.what).toContain(
        `no code of ${channels} channels has marks all longer than ${channels} steps`,
      );
    }
  });
});
