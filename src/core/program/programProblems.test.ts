import { describe, expect, it } from 'vitest';
import { cupsOn, jettyHead, jettyInstrument, type VaneWishes } from '../../../test/support/avrVane.ts';
import { detectorDefaults } from '../head/index.ts';
import type { AsBuilt } from '../instrument/index.ts';
import { programProblems } from './programProblems.ts';

/** Problems of the jetty vane as a test wants it, in short. */
function problems(wishes: VaneWishes): string[] {
  const instrument = jettyInstrument({ lineIntervalMs: 1000, ...wishes });
  const found = programProblems(instrument, jettyHead(instrument, wishes));
  return found.map(({ code, where, got, fix }) => `${code} ${where}: ${got}; ${fix}`);
}

/** Invented: a recorded turn of a disc of that many channels. */
function builtWith(channels: number): AsBuilt {
  return {
    recordedAt: '2026-05-01T09:00:00Z',
    tableHash: '00000000',
    channels: Array.from({ length: channels }, (_, i) => ({
      pin: `A${i}`,
      litCounts: 930,
      darkCounts: 93,
      lowCounts: 480,
      highCounts: 544,
      litIsHigh: true,
      edgeCurve: null,
      edgeWidthDeg: null,
    })),
    sense: 'same',
    positions: [{ word: '0'.repeat(channels), centreDeg: 5, halfWidthDeg: 5 }],
  };
}

describe('a program is not written, and the cure is named, for', () => {
  it('channels on pins of the board that hang on a multiplexer', () => {
    expect(problems({ input: 'multiplexer', channelPins: ['Y0', 'Y1', 'A0', 'Y3', 'Y4'] })).toEqual([
      'program/not-an-input controller.channelPins[2]: A0; Set it to Y2, which is free.',
    ]);
    expect(problems({ input: 'multiplexer', channelPins: ['Y0', 'Y1', 'Y2', 'Y3', 'Y4'] })).toEqual([]);
  });

  it('comparators that leave no pin for the lights', () => {
    // 14 pins less two of the serial line and one of the cups: eleven channels there, the twelfth on A0, none is left.
    const detector = detectorDefaults.phototransistor;
    const wishes = { input: 'digital', positions: 4096, board: 'atmega328p', detector } as const;
    const found = problems({ ...wishes, emitters: 'pulsed' });
    expect(found).toContain(
      'program/no-free-pin controller.channelPins: 0 free pins; ' +
        'Set circuit.input to shift-register, or circuit.emitters to steady.',
    );
    expect(problems({ ...wishes, emitters: 'steady' }).join()).not.toContain('program/no-free-pin');
    expect(problems({ ...wishes, input: 'shift-register', emitters: 'pulsed' }).join()).not.toContain(
      'program/no-free-pin',
    );
  });

  it('photoresistors that are lit for each read alone', () => {
    expect(problems({ emitters: 'pulsed' }).join()).toContain(
      'program/lights-too-slow circuit.emitters: 150 ms to settle, for 5 channels; ' +
        'Set circuit.emitters to steady, or head.detector.kind to phototransistor.',
    );
    expect(problems({ emitters: 'steady' })).toEqual([]);
    expect(problems({ emitters: 'pulsed', detector: detectorDefaults.phototransistor })).toEqual([]);
  });

  it('cups that nobody counts while the board is asleep', () => {
    expect(problems({ sleep: 'deep' })).toEqual([
      'program/sleep-loses-cups power.sleep: deep, with cups; Set power.sleep to idle, which misses nothing.',
    ]);
    expect(problems({ sleep: 'idle' })).toEqual([]);
    expect(problems({ sleep: 'deep', cups: null })).toEqual([]);
  });

  it('packs for a network on a board without one', () => {
    expect(problems({ format: 'senml' })).toEqual([
      'program/format-needs-network controller.format: senml on atmega328p; Set controller.format to text.',
    ]);
    expect(problems({ format: 'text' })).toEqual([]);
    expect(problems({ format: 'senml', board: 'esp32', cups: cupsOn('IO4') }).join()).not.toContain(
      'program/format-needs-network',
    );
  });

  it('a recorded turn of another disc', () => {
    expect(problems({ asBuilt: builtWith(4) })).toContain(
      'program/as-built-differs asBuilt.channels: 4 channels for a code of 5; ' +
        'Record a turn of this disc and run `vanewright fit --write`, or remove asBuilt.',
    );
    expect(problems({ asBuilt: builtWith(5) })).toEqual([]);
  });

  it('more positions than the board can hold', () => {
    // A word of twelve bits looks up two bytes in 4096, and each position has six more: 32 768 beside 8192 of program.
    expect(problems({ input: 'multiplexer', positions: 4096 })).toContain(
      'program/table-too-large need.positions: 40960 bytes for 4096 positions; ' +
        'Set need.positions to 2048, or controller.board to rp2040.',
    );
    expect(problems({ input: 'multiplexer', positions: 2048 })).toEqual([]);
  });
});
