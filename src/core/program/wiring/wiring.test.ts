import { describe, expect, it } from 'vitest';
import { cupsOn, jettyHead, jettyInstrument, type VaneWishes } from '../../../../test/support/avrVane.ts';
import { wiringPlan } from './wiring.ts';
import { wiringProblems } from './wiringProblems.ts';

function wiring(wishes: VaneWishes = {}) {
  const instrument = jettyInstrument(wishes);
  return wiringPlan(instrument, jettyHead(instrument, wishes));
}

function codes(wishes: VaneWishes): string[] {
  const instrument = jettyInstrument(wishes);
  const problems = wiringProblems(instrument, jettyHead(instrument, wishes));
  return problems.map(({ code, where, got }) => `${code} ${where} ${got}`);
}

describe('wiringPlan', () => {
  it('takes the analog inputs of the board in order', () => {
    expect(wiring()).toMatchObject({
      channelPins: ['A0', 'A1', 'A2', 'A3', 'A4'],
      cupPin: 'D2',
      resistorOhm: 20_000,
      sensorTo: 'supply',
    });
  });

  it('takes the pins of the maker as they are, channel 0 first', () => {
    expect(wiring({ positions: 4, channelPins: ['A3', 'A1'], cups: null })).toMatchObject({
      channelPins: ['A3', 'A1'],
      cupPin: null,
    });
  });

  it('says each connection in words', () => {
    expect(wiring({ positions: 2, sensorTo: 'ground' }).rows).toEqual([
      {
        from: 'channel 0',
        to: 'A0',
        note: 'Sensor of track 0 from A0 to ground, 20 kohm from A0 to supply.',
      },
      {
        from: 'cups',
        to: 'D2',
        note: "Switch from D2 to ground; the board's own pull-up holds the pin while it is open.",
      },
    ]);
  });
});

describe('what keeps it from being wired', () => {
  it('is more channels than inputs, with the inputs and the other ways named', () => {
    expect(() => wiring({ positions: 128 })).toThrowErrorMatchingInlineSnapshot(`
      [VanewrightError: program/too-many-channels: The code has more channels than there are analog inputs.
        where:   need.positions
        got:     7 channels for 128 positions
        allowed: 6 channels or fewer, on the analog inputs A0, A1, A2, A3, A4, A5
        fix:     Set circuit.input to multiplexer (one converter pin behind a 16-way multiplexer), or circuit.input to digital (a comparator for each channel), or circuit.input to shift-register (comparators behind shift registers). Or: Set need.positions to 64 or fewer, which 6 channels of one bit tell apart.]
    `);
    expect(codes({ positions: 64 })).toEqual([]); // the cure works
  });

  it('is a pin that cannot measure, is not there, is taken, or is one too few: all said at once', () => {
    expect(codes({ channelPins: ['A0', 'D3', 'A0', 'B7'], cups: cupsOn('D5') })).toEqual([
      'program/pin-count controller.channelPins 4 pins for 5 channels',
      'program/not-an-analog-pin controller.channelPins[1] D3',
      'program/pin-used-twice controller.channelPins[2] A0',
      'program/not-an-analog-pin controller.channelPins[3] B7',
      'program/no-interrupt cups.pin D5',
    ]);
  });

  it.each([
    ['A1', 'program/pin-used-twice cups.pin A1'],
    ['A5', 'program/no-interrupt cups.pin A5'],
    ['D0', 'program/no-interrupt cups.pin D0'],
    ['D14', 'program/unknown-pin cups.pin D14'],
    ['2', 'program/unknown-pin cups.pin 2'],
    ['', 'program/unknown-pin cups.pin '],
  ])('is cups on pin "%s"', (pin, problem) => {
    expect(codes({ cups: cupsOn(pin) })).toEqual([problem]);
  });

  it('is nothing for either interrupt pin', () => {
    expect(codes({ cups: cupsOn('D2') })).toEqual([]);
    expect(codes({ cups: cupsOn('D3') })).toEqual([]);
  });

  it('names a free pin as the cure, and it works', () => {
    const instrument = jettyInstrument({ channelPins: ['A0', 'A1', 'A2', 'A3', 'A3'] });
    const [problem] = wiringProblems(instrument, jettyHead(instrument));
    expect(problem!.fix).toBe('Set it to A4, which is free.');
    expect(codes({ channelPins: ['A0', 'A1', 'A2', 'A3', 'A4'] })).toEqual([]);
  });
});
