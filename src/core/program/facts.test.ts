import { describe, expect, it } from 'vitest';
import { jettyHead, jettyInstrument, type VaneWishes } from '../../../test/support/avrVane.ts';
import type { HeadPlan } from '../head/index.ts';
import { programFacts } from './facts.ts';
import { programProblems } from './programProblems.ts';
import { programFor } from './program.ts';

function problems(wishes: VaneWishes, change: (head: HeadPlan) => HeadPlan = (head) => head): string[] {
  const instrument = jettyInstrument(wishes);
  const head = change(jettyHead(instrument, wishes));
  return programProblems(instrument, head).map(({ code, got, fix }) => `${code}: ${got}; ${fix}`);
}

function facts(wishes: VaneWishes) {
  const instrument = jettyInstrument(wishes);
  return programFacts(instrument, jettyHead(instrument, wishes));
}

describe('what keeps a program from being written', () => {
  it.each([
    [544, 480],
    [501, 499],
    [0, 500],
    [500, 1024],
    [Number.NaN, 500],
  ])('is a pair of thresholds such as %d and %d', (lowCounts, highCounts) => {
    const changed = problems({}, (head) => ({ ...head, levels: { ...head.levels, lowCounts, highCounts } }));
    expect(changed).toHaveLength(1);
    expect(changed[0]).toContain('program/thresholds-crossed');
  });

  it('is a line that takes longer than the time between two, and the time it names is enough', () => {
    // 123 characters of ten bits at 9600 bit/s are 128.1 ms
    expect(problems({ baud: 9600, lineIntervalMs: 50 })).toEqual([
      'program/line-too-slow: 50 ms at 9600 bit/s, for lines of up to 123 characters; ' +
        'Set controller.lineIntervalMs to 129, or raise controller.baud.',
    ]);
    expect(problems({ baud: 9600, lineIntervalMs: 129 })).toEqual([]);
  });

  it('is a disc of three colours', () => {
    const changed = problems({}, (head) => {
      const tracks = head.disc.code.tracks.map((track, i) =>
        i === 0 ? { ...track, levelCount: 3 as const } : track,
      );
      return { ...head, disc: { ...head.disc, code: { ...head.disc.code, tracks } } };
    });
    expect(changed).toEqual([
      'program/three-levels: a track of 3 levels in reflected-gray, and a photoresistor; Set disc.code to reflected-gray.',
    ]);
  });

  it('is said all at once', () => {
    const wishes: VaneWishes = {
      channelPins: ['A0', 'A1', 'A2', 'A3', 'D9'],
      baud: 9600,
      lineIntervalMs: 20,
    };
    const instrument = jettyInstrument(wishes);
    expect(() => programFor(instrument, jettyHead(instrument, wishes))).toThrow(
      /not-an-analog-pin[^]*line-too-slow/,
    );
  });
});

describe('the numbers of a program', () => {
  it('allow what the fastest turn allows', () => {
    expect(facts({ positions: 32, turnRateDegPerS: 375 })).toMatchObject({
      turnHundredthsPerS: 37_500,
      halfTurnMs: 480,
    });
  });

  it('have the thresholds that whole counts need', () => {
    const instrument = jettyInstrument();
    const head = jettyHead(instrument);
    const whole = (lowCounts: number, highCounts: number): number[] => {
      const { channels } = programFacts(instrument, {
        ...head,
        levels: { ...head.levels, lowCounts, highCounts },
      });
      return [channels[0]!.low, channels[0]!.high, channels.length];
    };
    // 480.0 and more are not yet below 480: 479 is the first whole count that is.
    expect(whole(480, 544)).toEqual([479, 544, 5]);
    expect(whole(480.4, 543.6)).toEqual([479, 544, 5]);
    expect(whole(500, 500)).toEqual([499, 500, 5]); // without hysteresis there is one threshold
  });

  it('read a sensor twice only when it is weaker than the converter likes', () => {
    expect(facts({ sourceOhm: 10_000 }).readTwice).toBe(false);
    expect(facts({ sourceOhm: 10_001 }).readTwice).toBe(true);
  });

  it.each([
    ['supply', 1, 1],
    ['supply', 0, 0],
    ['ground', 1, 0],
    ['ground', 0, 1],
  ] as const)(
    'take high counts, with the sensor to %s and windows at level %i, as level %i',
    (sensorTo, windowLevel, level) => {
      expect(facts({ sensorTo, windowLevel }).channels[0]!.levelWhenHigh).toBe(level);
    },
  );

  it.each([
    ['Boathouse jetty', 'boathouse_jetty.ino'],
    ['  Čelo -- 2! ', 'celo_2.ino'],
    ['../../etc/passwd', 'etc_passwd.ino'],
    ['', 'vane.ino'],
    ['風見', 'vane.ino'],
    ['a'.repeat(63) + '_b', `${'a'.repeat(63)}.ino`],
  ])('come in a file whose name the tools take: "%s"', (name, fileName) => {
    const instrument = jettyInstrument({ name });
    expect(programFor(instrument, jettyHead(instrument)).fileName).toBe(fileName);
  });
});
