import { describe, expect, it } from 'vitest';
import { boardNamed, boards } from '../../src/core/boards/index.ts';
import { loopMs, readsEach, readUs, type CircuitInput } from '../../src/core/head/index.ts';
import { programFor, wiringPlan } from '../../src/core/program/index.ts';
import { lineCharsAtMost } from '../../src/core/record/index.ts';
import { buildAvr } from '../support/avrBuild.ts';
import { AvrChip, CLOCK_HZ } from '../support/avrChip.ts';
import type { AvrChipName } from '../support/avrChips.ts';
import { FAST_SENSOR, jettyHead, jettyInstrument, type VaneWishes } from '../support/avrVane.ts';

/** Times from each start of a read of all channels to the next. [us], rising */
async function readTimesUs(
  wishes: VaneWishes,
): Promise<{ times: number[]; loop: Parameters<typeof loopMs>[0] }> {
  const slow: VaneWishes = { baud: 57_600, lineIntervalMs: 60, ...wishes };
  const instrument = jettyInstrument(slow);
  const head = jettyHead(instrument, slow);
  const { circuit, spec, levels, board, disc } = head;
  const channels = disc.code.channels.length;
  const { hex } = await buildAvr(programFor(instrument, head).source);
  const chip = new AvrChip(hex);
  chip.runMs(250);
  const lights = circuit.emitters === 'pulsed' ? 2 : 1;
  const each = readsEach({ circuit, sourceOhm: levels.sourceOhm, board }) * channels * lights;
  const settled = 4 * each;
  const starts = chip.conversionCycles.filter((_, i) => i >= settled && i % each === 0);
  const times = starts.slice(1).map((cycles, i) => ((cycles - starts[i]!) * 1e6) / CLOCK_HZ);
  const lineChars = lineCharsAtMost(channels, 1023);
  return {
    times: times.sort((a, b) => a - b),
    loop: { channels, circuit, detector: spec.detector, sourceOhm: levels.sourceOhm, board, lineChars },
  };
}

describe('the time of one read', () => {
  it.each<[string, VaneWishes]>([
    ['five channels on the converter', {}],
    ['five channels read twice', { sourceOhm: 18_200 }],
    ['seven channels behind a multiplexer', { positions: 128, input: 'multiplexer' }],
    ['five channels with pulsed lights', { emitters: 'pulsed', detector: FAST_SENSOR }],
  ])('is on the emulated chip what the design counts with: %s', async (_, wishes) => {
    const { times, loop } = await readTimesUs(wishes);
    const median = times[times.length >> 1]!;
    expect(median / readUs(loop)).toBeGreaterThan(0.9);
    expect(median / readUs(loop)).toBeLessThan(1.1);
    // The longest pause has a line written in it; ordinary lines are about half the longest.
    const longest = times.at(-1)! / 1000;
    expect(longest).toBeLessThan(1.05 * loopMs(loop));
    expect(longest).toBeGreaterThan(0.4 * loopMs(loop));
  });
});

describe('every board', () => {
  it.each(boards.map(({ name }) => name))(
    '%s has a program for every way of reading it can be wired for',
    (name) => {
      const board = boardNamed(name)!;
      const cupPin = board.interruptPins[0]!;
      const cups = { pulsesPerTurn: 1, pin: cupPin, quietUs: 1500, runPerPulseM: null, startSpeedMPerS: 0 };
      for (const input of [
        'direct',
        'digital',
        'multiplexer',
        'shift-register',
        'ladder',
      ] as CircuitInput[]) {
        for (const emitters of ['steady', 'pulsed'] as const) {
          const wishes: VaneWishes = {
            board: name,
            positions: 8,
            input,
            emitters,
            detector: FAST_SENSOR,
            cups,
            lineIntervalMs: 20,
          };
          const instrument = jettyInstrument(wishes);
          const head = jettyHead(instrument, wishes);
          const { source } = programFor(instrument, head);
          expect(source.length).toBeGreaterThan(5000);
          const { channelPins, busPins, cupPin: cup } = wiringPlan(instrument, head);
          const used = [...busPins.map(({ pin }) => pin), cup!, ...board.serialPins];
          const all = input === 'direct' || input === 'digital' ? [...channelPins, ...used] : used;
          expect(new Set(all).size).toBe(all.length); // no pin has two jobs
        }
      }
    },
  );

  it.each(['atmega328p', 'atmega32u4'] as const)(
    '%s builds without a warning for every input, light, sleep and format',
    async (board) => {
      const cups = (name: AvrChipName) => ({
        pulsesPerTurn: 1,
        pin: name === 'atmega32u4' ? 'D3' : 'D2',
        quietUs: 1500,
        runPerPulseM: 0.4,
        startSpeedMPerS: 0.2,
      });
      const base: VaneWishes = { board, detector: FAST_SENSOR, cups: cups(board), lineIntervalMs: 40 };
      const variants: VaneWishes[] = [
        { input: 'digital', emitters: 'pulsed', format: 'json-lines' },
        { input: 'multiplexer', emitters: 'pulsed', format: 'nmea-mwd', lineIntervalMs: 5000 },
        { input: 'shift-register', emitters: 'pulsed', sleep: 'idle' },
        { input: 'direct', emitters: 'pulsed', sensorTo: 'ground', format: 'nmea-mwv' },
        { sleep: 'deep', cups: null, lineIntervalMs: 60_000, format: 'json-lines' },
        { positions: 2, cups: null, lineIntervalMs: 2000 },
      ];
      for (const variant of variants) {
        const wishes = { ...base, ...variant };
        const instrument = jettyInstrument(wishes);
        const { flashBytes } = await buildAvr(
          programFor(instrument, jettyHead(instrument, wishes)).source,
          board,
        );
        expect(flashBytes).toBeLessThan(boardNamed(board)!.flashBytes);
      }
    },
    60_000,
  );
});
