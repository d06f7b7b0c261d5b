import type { HeadPlan } from '../../head/index.ts';
import type { Instrument } from '../../instrument/index.ts';
import { showMm, showNumber } from '../../units/index.ts';
import { showOhm } from './showOhm.ts';

/** One row of the parts list. */
export interface PartRow {
  readonly quantity: number;
  readonly part: string;
  /** What to ask for, with its unit. */
  readonly value: string;
  readonly note: string;
}

function detectorRow({ spec, disc }: HeadPlan): PartRow {
  const { detector } = spec;
  const quantity = disc.code.channels.length;
  if (detector.kind === 'photoresistor') {
    return {
      quantity,
      part: 'photoresistor',
      value: `${showOhm(detector.litOhm)} lit, ${showOhm(detector.darkOhm)} dark, as measured behind the disc`,
      note: 'Contains cadmium: do not burn it, do not throw it in the household bin. Mask it with the aperture.',
    };
  }
  if (detector.kind === 'colour-sensor') {
    return {
      quantity,
      part: 'colour sensor',
      value: 'red, green, blue',
      note: 'One at each channel, shaded from daylight.',
    };
  }
  return {
    quantity,
    part: detector.kind === 'phototransistor' ? 'phototransistor' : detector.kind.replace('-', ' '),
    value: `${showNumber(detector.litMa, 3)} mA lit, ${showNumber(detector.darkMa, 3)} mA dark, behind the disc`,
    note: 'Take one with a daylight filter if the light is infrared. Mask it with the aperture.',
  };
}

/** Forward voltage of a light-emitting diode by colour; common practice, no source: the diode's own sheet decides. [V] */
function forwardVolts(wavelengthNm: number): number {
  if (wavelengthNm >= 780) return 1.3;
  if (wavelengthNm >= 590) return 1.9;
  return wavelengthNm >= 550 ? 2.1 : 3;
}

/** E12 values of one decade, IEC 60063. [-] */
const E12 = [10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82, 100];

/** Next E12 value that is not smaller, so that the current is not larger than asked for. [ohm] */
function nextE12(ohm: number): number {
  const decade = 10 ** (Math.floor(Math.log10(ohm)) - 1);
  const step = E12.find((value) => value * decade >= ohm * (1 - 1e-9))!;
  return Math.round(step * decade * 1e6) / 1e6;
}

/** Resistor of one light-emitting diode, so that its current is not larger than asked for. [ohm] */
export function lightResistorOhm({ spec, board }: Pick<HeadPlan, 'spec' | 'board'>): number {
  const { light } = spec;
  if (light.kind === 'laser') return 0;
  return nextE12(((board.supplyV - forwardVolts(light.wavelengthNm)) * 1000) / light.currentMa);
}

/** Chips and what belongs to them, by how the channels are read. */
function inputRows({ circuit, disc }: HeadPlan): PartRow[] {
  const channels = disc.code.channels.length;
  const rows: PartRow[] = [];
  if (circuit.input === 'multiplexer') {
    const note = 'Common pin to the converter, enable to ground, 100 nF beside its supply pins.';
    rows.push({
      quantity: 1,
      part: 'analog multiplexer',
      value: '16 inputs, for the supply of the board',
      note,
    });
  }
  if (circuit.input === 'digital' || circuit.input === 'shift-register') {
    const note =
      'Reference at half supply from two 10 kohm; from output to + 470 kohm, and 10 kohm before +, give 2 % of hysteresis.';
    rows.push({
      quantity: channels,
      part: 'comparator',
      value: 'push-pull output, for the supply of the board',
      note,
    });
  }
  if (circuit.input === 'shift-register') {
    const note = 'Clock inhibit to ground, unused inputs to ground, 100 nF beside its supply pins.';
    rows.push({
      quantity: Math.ceil(channels / 8),
      part: 'shift register',
      value: '8 bits, parallel in (74HC165 class)',
      note,
    });
  }
  return rows;
}

function switchRows({ circuit, spec, board, disc }: HeadPlan): PartRow[] {
  const { light } = spec;
  if (circuit.emitters === 'steady') return [];
  if (light.kind === 'led' && light.currentMa * disc.code.channels.length <= board.pinMa) return [];
  const note = 'Switches the ground side of all lights; its gate to the pin, 100 kohm from gate to ground.';
  return [{ quantity: 1, part: 'transistor', value: 'n-channel, logic level, 0.5 A', note }];
}

function lightRows({ spec, board, disc }: HeadPlan): PartRow[] {
  const { light } = spec;
  const quantity = disc.code.channels.length;
  if (light.kind === 'laser') {
    return [
      {
        quantity,
        part: 'laser module',
        value: `${light.wavelengthNm} nm, ${showNumber(light.powerMw, 2)} mW`,
        note: 'Read the laser cautions first. Keep it in a closed housing, without power while that is open.',
      },
    ];
  }
  const volts = forwardVolts(light.wavelengthNm);
  const resistor = lightResistorOhm({ spec, board });
  return [
    {
      quantity,
      part: 'light-emitting diode',
      value: `${light.wavelengthNm} nm, run at ${showNumber(light.currentMa, 1)} mA`,
      note:
        light.wavelengthNm > 700
          ? 'Looks dark while it is on: do not look into it.'
          : 'One facing each sensor.',
    },
    {
      quantity,
      part: 'resistor of a light-emitting diode',
      value: showOhm(resistor),
      note:
        `From ${board.supplyV} V with ${volts} V across the diode (common practice, no source); ` +
        `for another diode take (${board.supplyV} V - its voltage) / ${showNumber(light.currentMa, 1)} mA.`,
    },
  ];
}

/** The disc on its shaft, or the strip in its guides. */
function codedRows({ spec, strip }: HeadPlan['disc']): PartRow[] {
  const note = `Made by ${spec.process.kind} from the files of this instrument.`;
  const thick = `${showMm(spec.thicknessMm)} thick`;
  if (strip) {
    const longMm = (strip.toDeg - strip.fromDeg) * strip.mmPerDeg;
    const size = `${showNumber(longMm, 1)} mm long, ${showMm(Number(strip.heightMm.toFixed(2)))} wide`;
    return [
      { quantity: 1, part: 'coded strip', value: `${size}, ${thick}`, note },
      {
        quantity: 1,
        part: 'pair of guides',
        value: `for a strip ${thick}`,
        note: 'They keep it straight and at one distance from the sensors.',
      },
    ];
  }
  const { bore, diameterMm } = spec;
  return [
    { quantity: 1, part: 'coded disc', value: `${showMm(diameterMm)} across, ${thick}`, note },
    {
      quantity: 1,
      part: 'shaft with bearings',
      value: `to fit a bore of ${showMm(bore.diameterMm)}`,
      note:
        bore.shape === 'd' ? 'With a flat that fits the D bore.' : 'Clamp the disc so that it cannot slip.',
    },
  ];
}

/**
 * What to buy for the electronics, the disc and its shaft.
 *
 * @returns Rows in the order of the work: controller, sensors and their resistors [ohm], lights, cups, supply, disc.
 */
export function partsList(instrument: Instrument, head: HeadPlan): PartRow[] {
  const { board, circuit, levels, disc } = head;
  const side = circuit.sensorTo === 'supply' ? 'ground' : 'supply';
  const rows: PartRow[] = [
    { quantity: 1, part: 'controller board', value: board.title, note: `Chip ${board.chip}.` },
    detectorRow(head),
    {
      quantity: disc.code.channels.length,
      part: 'resistor of a channel',
      value: `${showOhm(levels.resistorOhm)}, ${showNumber(circuit.resistorTolerancePercent, 1)} %`,
      note: `Between the channel's pin and ${side}; the sensor goes from the pin to ${circuit.sensorTo}.`,
    },
    ...inputRows(head),
    ...lightRows(head),
    ...switchRows(head),
  ];
  if (instrument.cups) {
    rows.push({
      quantity: 1,
      part: 'cup switch',
      value: `closes ${instrument.cups.pulsesPerTurn} times a turn`,
      note: `Between pin ${instrument.cups.pin} and ground; the board's own pull-up resistor serves.`,
    });
  }
  rows.push(
    {
      quantity: 1,
      part: 'supply',
      value: `${board.supplyV} V, isolated extra-low voltage, with a fuse`,
      note: 'No mains voltage in the outdoor box.',
    },
    ...codedRows(disc),
  );
  return rows;
}
