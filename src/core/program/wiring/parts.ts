import {
  feedbackOhm,
  gateOf,
  GATE_OHM,
  hasGates,
  LADDER_DEFAULT,
  nearestE24,
  type HeadPlan,
} from '../../head/index.ts';
import type { Instrument } from '../../instrument/index.ts';
import { showMm, showNumber } from '../../units/index.ts';
import { forwardVolts, lightResistorOhm } from './lightResistor.ts';
import { channelPowerW, lightPowerW, ratingText } from './resistorPower.ts';
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

/** What makes on and off of each sensor. */
function gateRow({ board, circuit, disc }: HeadPlan): PartRow {
  const quantity = disc.code.channels.length;
  if (gateOf(circuit) === 'schmitt') {
    const value = 'inverter with Schmitt input (74HC14 class), for the supply of the board';
    const note = 'Six to a chip; inputs that are not used to ground, 100 nF beside its supply pins.';
    return { quantity, part: 'Schmitt inverter', value, note };
  }
  const scale = 2 ** board.converterBits;
  const back = nearestE24(feedbackOhm(circuit, scale));
  const percent = showNumber((100 * GATE_OHM) / (GATE_OHM + back), 1);
  const note =
    `Reference at half supply from two ${showOhm(GATE_OHM)}; from output to + ${showOhm(back)}, and ${showOhm(GATE_OHM)} ` +
    `before +, give ${percent} % of hysteresis.`;
  return { quantity, part: 'comparator', value: 'push-pull output, for the supply of the board', note };
}

/** Chips and what belongs to them, by how the channels are read. */
function inputRows(head: HeadPlan): PartRow[] {
  const { board, circuit, disc, ladder } = head;
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
  if (hasGates(circuit)) rows.push(gateRow(head));
  if (ladder) {
    const { tolerancePercent, ppmPerK } = circuit.ladder ?? LADDER_DEFAULT;
    for (const ohm of new Set(ladder.resistors.map((resistor) => resistor.ohm))) {
      const places = ladder.resistors.filter((resistor) => resistor.ohm === ohm).map(({ place }) => place);
      rows.push({
        quantity: places.length,
        part: 'resistor of the ladder',
        value: `${showOhm(ohm)}, ${showNumber(tolerancePercent, 2)} %, ${showNumber(ppmPerK, 0)} ppm/K, ${ratingText(board.supplyV ** 2 / ohm)}`,
        note: `${places.join(', ')}. All from one reel, so that they warm and age together.`,
      });
    }
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
      value: `${showOhm(resistor)}, ${ratingText(lightPowerW({ spec, board }))}`,
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
      value: `${showOhm(levels.resistorOhm)}, ${showNumber(circuit.resistorTolerancePercent, 1)} %, ${ratingText(channelPowerW(head))}`,
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
