import { gateOf, hasGates, type HeadPlan, type LadderPlan } from '../../head/index.ts';
import type { Instrument } from '../../instrument/index.ts';
import { LIGHT_COLOURS } from '../wiring/inputs.ts';
import { busPin, wiringPlan, type WiringPlan } from '../wiring/wiring.ts';
import { showOhm } from '../wiring/showOhm.ts';
import { lightResistorOhm } from '../wiring/lightResistor.ts';

/** A part of the circuit. */
export interface CircuitPart {
  /** `R3`, `U1`: unique. */
  readonly name: string;
  readonly kind:
    | 'board'
    | 'sensor'
    | 'resistor'
    | 'light'
    | 'comparator'
    | 'multiplexer'
    | 'register'
    | 'transistor'
    | 'switch';
  /** What it is, with its value. */
  readonly value: string;
}

/** Everything that is joined by one piece of wire. */
export interface Net {
  readonly name: string;
  /** `part.pin` of each end. n ≥ 2 */
  readonly ends: readonly string[];
}

/** Parts and the wires between them. */
export interface Netlist {
  readonly parts: readonly CircuitPart[];
  readonly nets: readonly Net[];
}

/** Parts and nets while they are put together. */
class Circuit {
  readonly parts: CircuitPart[] = [];
  readonly #nets = new Map<string, string[]>();

  part(name: string, kind: CircuitPart['kind'], value: string): void {
    this.parts.push({ name, kind, value });
  }

  join(net: string, ...ends: readonly string[]): void {
    this.#nets.set(net, [...(this.#nets.get(net) ?? []), ...ends]);
  }

  get nets(): Net[] {
    return [...this.#nets].map(([name, ends]) => ({ name, ends }));
  }
}

/** Where the middle of a channel's divider goes. */
function channelEnd({ input, channelPins }: WiringPlan, channel: number): string {
  const pin = channelPins[channel]!;
  if (input === 'multiplexer') return `U2.${pin}`;
  return input === 'direct' ? `U1.${pin}` : `CMP${channel}.+`;
}

/** Name of a register's input: R0 comes out first, so it is the last input, D7. */
export function registerEnd(place: string): string {
  const i = Number(place.slice(1));
  return `U${2 + Math.floor(i / 8)}.D${7 - (i % 8)}`;
}

function addChannel(circuit: Circuit, plan: WiringPlan, head: HeadPlan, channel: number): void {
  const [sensorNet, resistorNet] = plan.sensorTo === 'supply' ? ['VCC', 'GND'] : ['GND', 'VCC'];
  const net = `CH${channel}`;
  circuit.part(
    `S${channel}`,
    'sensor',
    `${head.spec.detector.kind.replaceAll('-', ' ')}, track ${head.channels[channel]!.track}`,
  );
  circuit.part(`R${channel}`, 'resistor', showOhm(plan.resistorOhm));
  circuit.join(net, `S${channel}.1`, `R${channel}.1`, channelEnd(plan, channel));
  circuit.join(sensorNet, `S${channel}.2`);
  circuit.join(resistorNet, `R${channel}.2`);
  if (!hasGates(plan)) return;
  const isSchmitt = gateOf(head.circuit) === 'schmitt';
  const value = isSchmitt
    ? 'inverter with Schmitt input, 74HC14 class'
    : 'push-pull output, reference at half supply, hysteresis as in the parts list';
  circuit.part(`CMP${channel}`, 'comparator', value);
  circuit.join('VCC', `CMP${channel}.VCC`);
  circuit.join('GND', `CMP${channel}.GND`);
  if (!isSchmitt) circuit.join('REF', `CMP${channel}.-`);
  const pin = plan.channelPins[channel]!;
  circuit.join(`OUT${channel}`, `CMP${channel}.out`, gateEnd(plan.input, pin));
}

/** Where the output of a gate goes. */
function gateEnd(input: WiringPlan['input'], pin: string): string {
  if (input === 'ladder') return `RW${pin.slice(1)}.1`;
  return input === 'digital' ? `U1.${pin}` : registerEnd(pin);
}

/** Resistors of one wire: legs from the gates, rungs from node to node, the end to ground. */
function addLadder(circuit: Circuit, plan: WiringPlan, { kind, resistors }: LadderPlan): void {
  const channels = plan.channelPins.length;
  const node = (c: number): string => (kind === 'weighted' || c === channels - 1 ? 'LADDER' : `NODE${c}`);
  circuit.join('LADDER', `U1.${busPin(plan, 'common')!}`);
  for (const { place, ohm } of resistors) {
    const [what, number] = place.split(' ');
    const c = Number(number);
    const name = what === 'leg' ? `RW${c}` : what === 'rung' ? `RN${c}` : 'RE';
    circuit.part(name, 'resistor', showOhm(ohm));
    if (what === 'leg') circuit.join(node(c), `${name}.2`);
    if (what === 'rung') {
      circuit.join(node(c), `${name}.1`);
      circuit.join(node(c + 1), `${name}.2`);
    }
    if (what === 'end') {
      circuit.join(node(0), `${name}.1`);
      circuit.join('GND', `${name}.2`);
    }
  }
}

function addChips(circuit: Circuit, plan: WiringPlan, head: HeadPlan): void {
  const { input, channelPins } = plan;
  const bus = (role: Parameters<typeof busPin>[1]): string => `U1.${busPin(plan, role)!}`;
  if (head.ladder) addLadder(circuit, plan, head.ladder);
  if (hasGates(plan) && gateOf(head.circuit) === 'comparator') {
    circuit.part('R90', 'resistor', '10 kohm');
    circuit.part('R91', 'resistor', '10 kohm');
    circuit.join('VCC', 'R90.1');
    circuit.join('REF', 'R90.2', 'R91.1');
    circuit.join('GND', 'R91.2');
  }
  if (input === 'multiplexer') {
    circuit.part('U2', 'multiplexer', '16-way analog multiplexer');
    circuit.join('COMMON', 'U2.common', bus('common'));
    for (const line of [0, 1, 2, 3] as const)
      circuit.join(`SELECT${line}`, `U2.S${line}`, bus(`select ${line}`));
    circuit.join('VCC', 'U2.VCC');
    circuit.join('GND', 'U2.GND', 'U2.enable');
  }
  if (input !== 'shift-register') return;
  const registers = Math.ceil((Math.max(...channelPins.map((pin) => Number(pin.slice(1)))) + 1) / 8);
  for (let i = 0; i < registers; i++) {
    const name = `U${2 + i}`;
    circuit.part(name, 'register', '8-bit shift register, parallel in, 74HC165 class');
    circuit.join('LOAD', ...(i === 0 ? [bus('load')] : []), `${name}.load`);
    circuit.join('CLOCK', ...(i === 0 ? [bus('clock')] : []), `${name}.clock`);
    circuit.join(`SERIAL${i}`, `${name}.Q7`, i === 0 ? bus('data') : `U${1 + i}.serial`);
    circuit.join('VCC', `${name}.VCC`);
    circuit.join('GND', `${name}.GND`, `${name}.inhibit`, ...(i === registers - 1 ? [`${name}.serial`] : []));
    for (let input7 = 0; input7 < 8; input7++) {
      const place = `R${8 * i + input7}`;
      if (!channelPins.includes(place)) circuit.join('GND', registerEnd(place)); // an open input reads anything
    }
  }
}

/** Lights that one pin switches, or that are always on. */
interface LightGroup {
  /** Added to the names of its parts and nets; empty where there is one group only. */
  readonly mark: string;
  readonly pin: string | null;
  readonly what: string;
}

function lightGroups(plan: WiringPlan, { light }: HeadPlan['spec']): LightGroup[] {
  const colours = LIGHT_COLOURS.flatMap((colour): LightGroup[] => {
    const pin = busPin(plan, colour);
    return pin === null ? [] : [{ mark: colour.slice(0, 1).toUpperCase(), pin, what: colour }];
  });
  return colours.length > 0
    ? colours
    : [{ mark: '', pin: busPin(plan, 'lights'), what: `${light.wavelengthNm} nm` }];
}

/** A transistor at the ground side where a pin cannot carry the lights. @returns nets of both sides. */
function lightSides(
  circuit: Circuit,
  { mark, pin }: LightGroup,
  head: HeadPlan,
): { high: string; low: string } {
  const { light } = head.spec;
  if (pin === null) return { high: 'VCC', low: 'GND' };
  const isDirect = light.kind === 'led' && light.currentMa * head.channels.length <= head.board.pinMa;
  if (isDirect) {
    circuit.join(`LIGHTS${mark}`, `U1.${pin}`);
    return { high: `LIGHTS${mark}`, low: 'GND' };
  }
  const number = ['', 'R', 'G', 'B'].indexOf(mark);
  const transistor = `Q${number + 1}`;
  const resistor = `R${92 + number}`;
  circuit.part(transistor, 'transistor', 'n-channel, logic level');
  circuit.part(resistor, 'resistor', '100 kohm');
  circuit.join(`GATE${mark}`, `U1.${pin}`, `${transistor}.gate`, `${resistor}.1`);
  circuit.join('GND', `${transistor}.source`, `${resistor}.2`);
  circuit.join(`LIGHTS_LOW${mark}`, `${transistor}.drain`);
  return { high: 'VCC', low: `LIGHTS_LOW${mark}` };
}

function addLights(circuit: Circuit, plan: WiringPlan, head: HeadPlan): void {
  const { light } = head.spec;
  for (const group of lightGroups(plan, head.spec)) {
    const { high, low } = lightSides(circuit, group, head);
    for (let channel = 0; channel < head.channels.length; channel++) {
      const name = `L${channel}${group.mark}`;
      if (light.kind === 'laser') {
        circuit.part(name, 'light', `laser module, ${group.what}`);
        circuit.join(high, `${name}.+`);
      } else {
        circuit.part(name, 'light', `light-emitting diode, ${group.what}`);
        circuit.part(`R${name}`, 'resistor', showOhm(lightResistorOhm(head)));
        circuit.join(high, `R${name}.1`);
        circuit.join(`LIGHT${channel}${group.mark}`, `R${name}.2`, `${name}.+`);
      }
      circuit.join(low, `${name}.-`);
    }
  }
}

/**
 * Every part with its value, and every wire between them.
 *
 * @param head - Resistors [ohm], lights and board of the same instrument.
 * @returns Nets `VCC` and `GND` first of all that are shared; each end once.
 * @throws VanewrightError with every problem of `wiringProblems`.
 * @check src/core/program/schematic/netlist.test.ts
 */
export function netlist(instrument: Instrument, head: HeadPlan): Netlist {
  const plan = wiringPlan(instrument, head);
  const circuit = new Circuit();
  circuit.part('U1', 'board', `${plan.board.chip} board, ${plan.board.supplyV} V`);
  circuit.join('VCC', 'U1.VCC');
  circuit.join('GND', 'U1.GND');
  for (let channel = 0; channel < plan.channelPins.length; channel++)
    addChannel(circuit, plan, head, channel);
  addChips(circuit, plan, head);
  addLights(circuit, plan, head);
  if (plan.cupPin !== null) {
    circuit.part('K1', 'switch', 'cup switch, closes to ground');
    circuit.join('CUPS', `U1.${plan.cupPin}`, 'K1.1');
    circuit.join('GND', 'K1.2');
  }
  return { parts: circuit.parts, nets: circuit.nets };
}

/** The netlist as text: a row a part, then a row a net. [ohm in the values] */
export function netlistText({ parts, nets }: Netlist): string {
  const partRows = parts.map(({ name, kind, value }) => `${name.padEnd(6)} ${kind.padEnd(11)} ${value}`);
  const netRows = nets.map(({ name, ends }) => `${name.padEnd(11)} ${ends.join(' ')}`);
  return `parts\n${partRows.join('\n')}\n\nnets\n${netRows.join('\n')}\n`;
}
