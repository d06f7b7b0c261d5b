import type { Instrument } from '../../instrument/index.ts';
import type { HeadPlan } from '../../head/index.ts';
import { element, label, look, picture, polyline, type Markup } from '../../report/index.ts';
import { showNumber } from '../../units/index.ts';

const wire = { stroke: look.ink, 'stroke-width': 1.5 };

/** A part in the line of the divider, with its name and what it is. */
interface Leg {
  readonly name: string;
  readonly note: string;
}

function part(y: number, { name, note }: Leg): Markup[] {
  const isSensor = name === 'sensor';
  return [
    element('rect', {
      x: 70,
      y,
      width: 20,
      height: 50,
      fill: isSensor ? look.accentTint : look.light,
      ...wire,
    }),
    label(name, { x: 102, y: y + 22 }),
    label(note, { x: 102, y: y + 38 }, { fill: look.faintInk }),
  ];
}

/** One channel's divider: which part sits at the supply, which at ground, and where the pin is joined. */
export function dividerPicture({ head: spec, circuit }: Instrument, head: HeadPlan): Markup {
  const sensor: Leg = { name: 'sensor', note: spec.detector.kind };
  const resistor: Leg = { name: 'resistor', note: `${showNumber(head.levels.resistorOhm, 0)} ohm` };
  const [upper, lower] = circuit.sensorTo === 'supply' ? [sensor, resistor] : [resistor, sensor];
  return picture(
    {
      width: 330,
      height: 240,
      title: `One channel: ${upper.name} to the supply, ${lower.name} to ground, the pin between them`,
    },
    label(
      `+${showNumber(head.board.supplyV, 1)} V, from the board`,
      { x: 80, y: 20 },
      { 'text-anchor': 'start' },
    ),
    polyline(
      [
        [80, 26],
        [80, 40],
      ],
      wire,
    ),
    ...part(40, upper),
    polyline(
      [
        [80, 90],
        [80, 140],
      ],
      wire,
    ),
    element('circle', { cx: 80, cy: 115, r: 3, fill: look.ink }),
    polyline(
      [
        [80, 115],
        [200, 115],
      ],
      wire,
    ),
    label('analog pin', { x: 206, y: 119 }),
    ...part(140, lower),
    polyline(
      [
        [80, 190],
        [80, 208],
      ],
      wire,
    ),
    polyline(
      [
        [66, 208],
        [94, 208],
      ],
      { ...wire, 'stroke-width': 2.5 },
    ),
    polyline(
      [
        [71, 213],
        [89, 213],
      ],
      { ...wire, 'stroke-width': 2 },
    ),
    polyline(
      [
        [76, 218],
        [84, 218],
      ],
      wire,
    ),
    label('ground', { x: 102, y: 216 }),
  );
}
