import { describe, expect, it } from 'vitest';
import {
  FAST_SENSOR,
  jettyHead,
  jettyInstrument,
  type VaneWishes,
} from '../../../../test/support/avrVane.ts';
import { netlist, netlistText, type Netlist } from './netlist.ts';
import { schematicPicture } from './schematicPicture.ts';

function listOf(wishes: VaneWishes): Netlist {
  const instrument = jettyInstrument(wishes);
  return netlist(instrument, jettyHead(instrument, wishes));
}

const designs: readonly (readonly [string, VaneWishes])[] = [
  ['dividers on the converter', {}],
  ['sensors to ground, no cups', { sensorTo: 'ground', cups: null }],
  ['seven channels behind a multiplexer', { positions: 128, input: 'multiplexer', lineIntervalMs: 10 }],
  ['seven comparators', { positions: 128, input: 'digital' }],
  [
    'ten comparators behind two shift registers',
    { positions: 1024, input: 'shift-register', lineIntervalMs: 4 },
  ],
  ['five comparators on one wire', { input: 'ladder' }],
  ['five Schmitt inverters on one wire', { input: 'ladder', gate: 'schmitt', ladderKind: 'weighted' }],
  ['pulsed lights behind a transistor', { emitters: 'pulsed', detector: FAST_SENSOR }],
];

/** Net of an end. */
const netOf = (list: Netlist, end: string): string | undefined =>
  list.nets.find(({ ends }) => ends.includes(end))?.name;

describe('the netlist', () => {
  it.each(designs)('joins every end once, and no net leads nowhere: %s', (_, wishes) => {
    const { parts, nets } = listOf(wishes);
    const ends = nets.flatMap((net) => net.ends);
    expect(new Set(ends).size).toBe(ends.length);
    for (const net of nets) expect(net.ends.length, net.name).toBeGreaterThanOrEqual(2);
    expect(new Set(parts.map(({ name }) => name)).size).toBe(parts.length);
    for (const end of ends) expect(parts.map(({ name }) => name)).toContain(end.split('.')[0]);
    for (const { name } of parts)
      expect(
        ends.some((end) => end.startsWith(`${name}.`)),
        name,
      ).toBe(true);
  });

  it('makes a divider of sensor and resistor between supply and ground, its middle on the pin of the channel', () => {
    const list = listOf({ sensorTo: 'ground', channelPins: ['A5', 'A4', 'A3', 'A2', 'A1'] });
    expect(netOf(list, 'U1.A5')).toBe(netOf(list, 'S0.1'));
    expect(netOf(list, 'U1.A5')).toBe(netOf(list, 'R0.1'));
    expect([netOf(list, 'S0.2'), netOf(list, 'R0.2')]).toEqual(['GND', 'VCC']);
  });

  it('chains the shift registers: the first sends to the board, the second to the first', () => {
    const list = listOf({ positions: 1024, input: 'shift-register', lineIntervalMs: 4 });
    expect(netOf(list, 'U2.serial')).toBe(netOf(list, 'U3.Q7'));
    expect(netOf(list, 'U3.serial')).toBe('GND');
    expect(netOf(list, 'U2.D7')).toBe('OUT0'); // R0 comes out first
    expect(netOf(list, 'U3.D6')).toBe('OUT9');
    expect(netOf(list, 'U3.D0')).toBe('GND'); // unused
  });

  it('switches pulsed lights at their ground side when a pin cannot carry them', () => {
    const list = listOf({ emitters: 'pulsed', detector: FAST_SENSOR });
    expect(netOf(list, 'L0.-')).toBe(netOf(list, 'Q1.drain'));
    expect(netOf(list, 'Q1.source')).toBe('GND');
    const weak = jettyInstrument({ emitters: 'pulsed', detector: FAST_SENSOR });
    const head = jettyHead(weak);
    const small = netlist(weak, {
      ...head,
      spec: { ...head.spec, light: { kind: 'led', currentMa: 4, wavelengthNm: 950 } },
    });
    expect(small.parts.some(({ kind }) => kind === 'transistor')).toBe(false); // 5 x 4 mA = 20 mA
    expect(netOf(small, 'RL0.1')).toBe('LIGHTS');
  });

  it('is text of one row a part and a net', () => {
    const { parts, nets } = listOf({});
    expect(netlistText({ parts, nets }).trim().split('\n')).toHaveLength(parts.length + nets.length + 3);
  });
});

describe('the schematic', () => {
  it.each(designs)('shows every part, and every pin of every chip: %s', (_, wishes) => {
    const instrument = jettyInstrument(wishes);
    const { html } = schematicPicture(instrument, jettyHead(instrument, wishes));
    const texts = [...html.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) => text!);
    const { parts, nets } = listOf(wishes);
    for (const { name } of parts) {
      expect(
        texts.some((text) => text === name || text.startsWith(`${name}  `)),
        name,
      ).toBe(true);
    }
    const boxes = parts.filter(({ kind }) =>
      ['board', 'multiplexer', 'register', 'comparator', 'transistor'].includes(kind),
    );
    for (const net of nets) {
      for (const end of net.ends) {
        const [part, pin] = [end.slice(0, end.indexOf('.')), end.slice(end.indexOf('.') + 1)];
        if (boxes.some(({ name }) => name === part)) expect(texts).toContain(`${pin}  ·  ${net.name}`);
      }
    }
    expect(html).not.toContain('NaN');
  });

  it('draws laser modules from rail to rail, with nothing between', () => {
    const plain = jettyInstrument();
    const light = { kind: 'laser', powerMw: 0.9, wavelengthNm: 650, acceptHazard: false } as const;
    const instrument = { ...plain, head: { ...plain.head, light } };
    const head = { ...jettyHead(plain), spec: instrument.head };
    const { html } = schematicPicture(instrument, head);
    expect(html.match(/L\d  laser module/g)).toHaveLength(5);
    expect(html).not.toContain('undefined');
  });
});
