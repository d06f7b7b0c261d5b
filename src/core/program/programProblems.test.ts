import { describe, expect, it } from 'vitest';
import {
  FAST_SENSOR,
  cupsOn,
  jettyHead,
  jettyInstrument,
  type VaneWishes,
} from '../../../test/support/avrVane.ts';
import { buildCode } from '../codes/index.ts';
import { boardNamed } from '../boards/index.ts';
import { asBuiltHash, type AsBuilt } from '../instrument/index.ts';
import { programFiles } from './program.ts';
import { programProblems } from './programProblems.ts';

function problems(wishes: VaneWishes) {
  const instrument = jettyInstrument(wishes);
  return programProblems(instrument, jettyHead(instrument, wishes));
}

const codesOf = (wishes: VaneWishes): string[] => problems(wishes).map(({ code }) => code);

/** A recorded turn of a disc with this many channels, invented. */
function recordedTurn(channels: number, low = 479): AsBuilt {
  const found = {
    channels: Array.from({ length: channels }, (_, c) => ({
      pin: `A${c}`,
      litCounts: 930,
      darkCounts: 93,
      lowCounts: low,
      highCounts: low + 65,
      litIsHigh: true,
      edgeCurve: null,
      edgeWidthDeg: null,
    })),
    sense: 'same' as const,
    positions: Array.from({ length: 2 ** channels }, (_, k) => ({
      word: (k ^ (k >> 1)).toString(2).padStart(channels, '0'),
      centreDeg: ((k + 0.5) * 360) / 2 ** channels,
      halfWidthDeg: 180 / 2 ** channels,
    })),
  };
  return { recordedAt: '2024-05-17T10:30:00Z', tableHash: asBuiltHash(found), ...found };
}

describe('what cannot be put together is refused, and the cure named is one', () => {
  it.each<[string, VaneWishes, string, VaneWishes]>([
    [
      'program/lights-too-slow',
      { emitters: 'pulsed', lineIntervalMs: 5000 },
      'head.detector.kind to phototransistor',
      { emitters: 'pulsed', detector: FAST_SENSOR, lineIntervalMs: 5000 },
    ],
    ['program/sleep-loses-cups', { sleep: 'deep' }, 'power.sleep to idle', { sleep: 'idle' }],
    ['program/format-needs-network', { format: 'senml' }, 'controller.format to text', { format: 'text' }],
    [
      'program/too-many-channels',
      { board: 'rp2040', cups: cupsOn('GP2') },
      'circuit.input to multiplexer',
      { board: 'rp2040', cups: cupsOn('GP2'), input: 'multiplexer' },
    ],
    [
      'program/not-an-input',
      { input: 'multiplexer', lineIntervalMs: 5, channelPins: ['Y0', 'Y1', 'Y2', 'Y3', 'A0'] },
      'Set it to Y4',
      { input: 'multiplexer', lineIntervalMs: 5, channelPins: ['Y0', 'Y1', 'Y2', 'Y3', 'Y4'] },
    ],
    [
      'program/no-free-pin',
      {
        input: 'digital',
        emitters: 'pulsed',
        detector: FAST_SENSOR,
        positions: 2048,
        cups: cupsOn('D3'),
        lineIntervalMs: 6,
        channelPins: ['D2', 'D4', 'D5', 'D6', 'D7', 'D8', 'D9', 'D10', 'D11', 'D12', 'D13'],
      },
      'circuit.input to shift-register',
      {
        input: 'shift-register',
        emitters: 'pulsed',
        detector: FAST_SENSOR,
        positions: 2048,
        cups: cupsOn('D3'),
        lineIntervalMs: 6,
      },
    ],
    [
      'program/as-built-differs',
      { asBuilt: recordedTurn(4) },
      'remove asBuilt',
      { asBuilt: recordedTurn(5) },
    ],
    [
      'program/thresholds-crossed',
      { asBuilt: recordedTurn(5, 1000) },
      'vanewright fit',
      { asBuilt: recordedTurn(5) },
    ],
  ])('%s', (code, wrong, cure, right) => {
    const found = problems(wrong).find((problem) => problem.code === code);
    expect(found?.fix).toContain(cure);
    expect(codesOf(right)).toEqual([]);
  });

  it('program/table-too-large, with the most positions that fit', () => {
    const wishes: VaneWishes = { positions: 4096, input: 'shift-register', lineIntervalMs: 5 };
    const [problem] = problems(wishes);
    expect(problem!.code).toBe('program/table-too-large');
    const most = Number(/positions to (\d+)/.exec(problem!.fix)![1]);
    expect(most).toBeGreaterThanOrEqual(1024);
    expect(codesOf({ ...wishes, positions: most })).toEqual([]);
    expect(codesOf({ ...wishes, board: 'rp2040', cups: cupsOn('GP2') })).toEqual([]);
  });

  it('whatever keeps the head from reading its disc keeps the program from being written', () => {
    const instrument = jettyInstrument();
    const fault = { code: 'head/no-contrast', what: 'a', where: 'b', got: 'c', allowed: 'd', fix: 'e' };
    expect(programProblems(instrument, { ...jettyHead(instrument), faults: [fault] })).toEqual([fault]);
  });

  it('a word of too many channels is refused before its table is thought of', () => {
    const code = buildCode('single-track-gray', 360, { channels: 9, headPlacement: 'even' });
    expect(codesOf({ positions: 360, code, lineIntervalMs: 10 })).toEqual(['program/too-many-channels']);
    expect(codesOf({ positions: 360, code, lineIntervalMs: 10, input: 'multiplexer' })).toEqual([]);
  });
});

describe('the files of a program', () => {
  it('are a sketch in the folder of its name, or MicroPython with the C++ unit beside it', () => {
    const paths = (wishes: VaneWishes): string[] => {
      const instrument = jettyInstrument(wishes);
      return programFiles(instrument, jettyHead(instrument, wishes)).map(({ path }) => path);
    };
    const board: VaneWishes = { board: 'esp32', cups: null };
    expect(boardNamed('esp32')!.language).toBe('micropython');
    expect(paths({})).toEqual(['boathouse_jetty/boathouse_jetty.ino']);
    expect(paths(board)).toEqual(['main.py', 'vane_unit.h']);
    expect(paths({ ...board, format: 'senml' })).toEqual(['main.py']);
  });
});
