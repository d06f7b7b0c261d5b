import type { HeadPlan } from '../../head/index.ts';
import type { Instrument } from '../../instrument/index.ts';
import { element, label, look, picture, polyline, type Markup } from '../../report/index.ts';
import { netlist, type CircuitPart, type Net, type Netlist } from './netlist.ts';

const wire = { stroke: look.ink, 'stroke-width': 1.5 };

/** Places of the drawing. [user units] */
const RAIL_LEFT = 40;
const RAIL_RIGHT = 560;
const FIRST_SLOT = 120;
const SECOND_SLOT = 380;
const NODE = 300;
const PART_WIDTH = 80;
const ROW = 58;
const TOP = 60;
const PIN = 18;
const BOX_WIDTH = 250;

/** Kinds drawn in a line between the two rails; everything else is a box with named pins. */
const inLine: readonly CircuitPart['kind'][] = ['sensor', 'resistor', 'light', 'switch'];

/** A part in a line, with the nets at its ends. */
interface Leg {
  readonly part: CircuitPart;
  readonly nets: readonly [string, string];
}

/** A line of the drawing: one part or two with a net between them. */
interface Row {
  readonly left: string;
  readonly middle: string;
  readonly right: string;
  readonly legs: readonly (Leg | null)[];
}

/** Net of every end: `R3.1` is on `CH3`. */
function netsOfEnds(nets: readonly Net[]): Map<string, string> {
  return new Map(nets.flatMap(({ name, ends }) => ends.map((end) => [end, name])));
}

/** Ends of a part in the order they are first joined. */
function endsOf(nets: readonly Net[], part: string): string[] {
  return nets.flatMap(({ ends }) => ends.filter((end) => end.startsWith(`${part}.`)));
}

function legsOf({ parts, nets }: Netlist): Leg[] {
  const netOf = netsOfEnds(nets);
  return parts
    .filter(({ kind }) => inLine.includes(kind))
    .map((part) => {
      const [a, b] = endsOf(nets, part.name).map((end) => netOf.get(end)!) as [string, string];
      return { part, nets: [a, b] };
    });
}

const isRail = (net: string): boolean => net === 'VCC' || net === 'GND';

/** Net of a leg that is not this one. */
const across = ({ nets }: Leg, net: string): string => (nets[0] === net ? nets[1] : nets[0]);

/** Pairs of legs with one net between them in a row each; what is left over has a row of its own. */
function rowsOf(legs: readonly Leg[], nets: readonly Net[]): Row[] {
  const size = (net: string): number => nets.find(({ name }) => name === net)!.ends.length;
  const open = [...legs];
  const rows: Row[] = [];
  while (open.length > 0) {
    const leg = open.shift()!;
    if (leg.nets.every(isRail)) {
      // A laser module goes from rail to rail: nothing is between it and ground.
      rows.push({ left: 'VCC', middle: 'GND', right: '', legs: [leg, null] });
      continue;
    }
    const middle = leg.nets.filter((net) => !isRail(net)).sort((a, b) => size(a) - size(b))[0]!;
    const at = open.findIndex(({ nets: ends }) => ends.includes(middle));
    const other = at < 0 ? null : open.splice(at, 1)[0]!;
    const isFirstLeft = across(leg, middle) !== 'GND' && (other === null || across(other, middle) !== 'VCC');
    const [first, second] = isFirstLeft ? [leg, other] : [other, leg];
    rows.push({
      left: first ? across(first, middle) : '',
      middle,
      right: second ? across(second, middle) : '',
      legs: [first, second],
    });
  }
  return rows;
}

function symbol({ kind }: CircuitPart, x: number, y: number): Markup[] {
  const middle = x + PART_WIDTH / 2;
  if (kind === 'light') {
    return [
      element('path', {
        d: `M${middle - 9},${y - 9} L${middle - 9},${y + 9} L${middle + 9},${y} Z`,
        fill: look.light,
        ...wire,
      }),
      polyline(
        [
          [middle + 9, y - 9],
          [middle + 9, y + 9],
        ],
        wire,
      ),
      polyline(
        [
          [x, y],
          [middle - 9, y],
        ],
        wire,
      ),
      polyline(
        [
          [middle + 9, y],
          [x + PART_WIDTH, y],
        ],
        wire,
      ),
    ];
  }
  if (kind === 'switch') {
    return [
      polyline(
        [
          [x, y],
          [middle - 12, y],
        ],
        wire,
      ),
      polyline(
        [
          [middle - 12, y],
          [middle + 10, y - 12],
        ],
        wire,
      ),
      polyline(
        [
          [middle + 12, y],
          [x + PART_WIDTH, y],
        ],
        wire,
      ),
    ];
  }
  const fill = kind === 'sensor' ? look.accentTint : look.light;
  return [element('rect', { x, y: y - 8, width: PART_WIDTH, height: 16, fill, ...wire })];
}

/** What a net is called at a node, with the pin of a chip or the board that it goes to. */
function flagText(net: string, nets: readonly Net[], boxes: readonly string[]): string {
  if (isRail(net)) return net;
  const ends = nets.find(({ name }) => name === net)?.ends ?? [];
  const ports = ends.filter((end) => boxes.includes(end.split('.')[0]!));
  return ports.length > 0 ? `${net}: ${ports.join(', ')}` : net;
}

function rowMarkup(row: Row, y: number, flag: string): Markup[] {
  const drawn: Markup[] = [];
  const slots = [FIRST_SLOT, SECOND_SLOT];
  const outer = [RAIL_LEFT, RAIL_RIGHT];
  row.legs.forEach((leg, i) => {
    if (!leg) return;
    const x = slots[i]!;
    const [inner, end] = i === 0 ? [x + PART_WIDTH, x] : [x, x + PART_WIDTH];
    const net = i === 0 ? row.left : row.right;
    const reach = isRail(net) ? outer[i]! : end + (i === 0 ? -20 : 20);
    drawn.push(
      polyline(
        [
          [reach, y],
          [end, y],
        ],
        wire,
      ),
      polyline(
        [
          [inner, y],
          [NODE, y],
        ],
        wire,
      ),
    );
    drawn.push(...symbol(leg.part, x, y));
    drawn.push(
      label(
        `${leg.part.name}  ${leg.part.value}`,
        { x, y: y + 24 },
        { fill: look.faintInk, 'font-size': 10 },
      ),
    );
    if (!isRail(net)) drawn.push(label(net, { x: reach - (i === 0 ? 60 : 0), y: y - 4 }));
  });
  drawn.push(element('circle', { cx: NODE, cy: y, r: 3 }));
  drawn.push(
    polyline(
      [
        [NODE, y],
        [NODE, y - 14],
      ],
      wire,
    ),
    label(flag, { x: NODE + 6, y: y - 16 }),
  );
  return drawn;
}

function rail(name: string, x: number, height: number): Markup[] {
  return [
    polyline(
      [
        [x, TOP - 24],
        [x, height],
      ],
      { ...wire, 'stroke-width': 2.5 },
    ),
    label(name, { x, y: TOP - 30 }, { 'text-anchor': 'middle' }),
  ];
}

/** A chip, the board or a transistor: a box with one line for each pin that is joined. */
function boxMarkup(part: CircuitPart, list: Netlist, x: number, y: number): Markup[] {
  const netOf = netsOfEnds(list.nets);
  const ends = endsOf(list.nets, part.name);
  const rows = ends.map((end, i) => {
    const pin = end.slice(part.name.length + 1);
    return label(`${pin}  ·  ${netOf.get(end)!}`, { x: x + 10, y: y + 42 + i * PIN });
  });
  return [
    element('rect', { x, y, width: BOX_WIDTH, height: boxHeight(ends.length), fill: look.light, ...wire }),
    label(part.name, { x: x + 10, y: y + 16 }, { 'font-weight': 'bold' }),
    label(part.value, { x: x + 34, y: y + 16 }, { fill: look.faintInk, 'font-size': 10 }),
    ...rows,
  ];
}

const boxHeight = (pins: number): number => 34 + pins * PIN;

/** Boxes in two columns, each put where there is room first. */
function boxesMarkup(list: Netlist, top: number): { readonly markup: Markup[]; readonly bottom: number } {
  const columns = [top, top];
  const markup: Markup[] = [];
  for (const part of list.parts.filter(({ kind }) => !inLine.includes(kind))) {
    const column = columns[0]! <= columns[1]! ? 0 : 1;
    markup.push(...boxMarkup(part, list, RAIL_LEFT + column * (BOX_WIDTH + 20), columns[column]!));
    columns[column]! += boxHeight(endsOf(list.nets, part.name).length) + 16;
  }
  return { markup, bottom: Math.max(...columns) };
}

/**
 * The circuit as a picture: dividers, lights and switch in lines between the two rails, chips and board as boxes whose
 * pins name their nets. It is drawn from `netlist`, so that both say the same.
 *
 * @param head - Resistors [ohm], lights and board of the same instrument.
 * @throws VanewrightError with every problem of `wiringProblems`.
 * @check src/core/program/schematic/netlist.test.ts
 */
export function schematicPicture(instrument: Instrument, head: HeadPlan): Markup {
  const list = netlist(instrument, head);
  const boxes = list.parts.filter(({ kind }) => !inLine.includes(kind)).map(({ name }) => name);
  const rows = rowsOf(legsOf(list), list.nets);
  const height = TOP + rows.length * ROW;
  const chips = boxesMarkup(list, height + 20);
  return picture(
    {
      width: RAIL_RIGHT + 40,
      height: chips.bottom,
      title: `Circuit of ${head.channels.length} channels on ${head.board.title}`,
    },
    ...rail(`VCC, +${head.board.supplyV} V`, RAIL_LEFT, height),
    ...rail('GND', RAIL_RIGHT, height),
    ...rows.flatMap((row, i) => rowMarkup(row, TOP + i * ROW, flagText(row.middle, list.nets, boxes))),
    ...chips.markup,
  );
}
