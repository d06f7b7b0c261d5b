import { element, joined, type Markup } from '../../report/index.ts';
import { showNumber } from '../../units/index.ts';
import type { Triple } from '../solids/meshFacts.ts';
import type { Mesh, Solid } from '../solids/solid.ts';

/** Namespace of the core of the format. */
const CORE = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02';

/** Colour of a body that names none: plain light grey. */
const PLAIN = '#b8bcc0';

/** Decimals of a millimetre: finer than the shortest side of a mesh. */
const PLACES = 5;

/** A part to be printed: one body, or several of different colours that stay in place to each other. */
export interface ThreeMfPart {
  readonly name: string;
  readonly bodies: readonly Solid[];
}

// Numbers can hold no markup, so these long lists are written straight.
function meshXml({ positionsMm, triangles }: Mesh): Markup {
  const corners: string[] = [];
  for (let at = 0; at < positionsMm.length; at += 3) {
    const [x, y, z] = [0, 1, 2].map((axis) => showNumber(positionsMm[at + axis]!, PLACES));
    corners.push(`<vertex x="${x}" y="${y}" z="${z}"/>`);
  }
  const faces: string[] = [];
  for (let at = 0; at < triangles.length; at += 3) {
    faces.push(`<triangle v1="${triangles[at]}" v2="${triangles[at + 1]}" v3="${triangles[at + 2]}"/>`);
  }
  return element(
    'mesh',
    {},
    element('vertices', {}, { html: corners.join('') }),
    element('triangles', {}, { html: faces.join('') }),
  );
}

const colourOf = ({ colour = PLAIN }: Solid): string => colour.toUpperCase();

/** A matrix that only moves, row by row. */
function moveText([x, y, z]: Triple): string {
  return `1 0 0 0 1 0 0 0 1 ${[x, y, z].map((value) => showNumber(value, PLACES)).join(' ')}`;
}

interface Numbered {
  readonly objects: readonly Markup[];
  readonly items: readonly Markup[];
}

/** Objects and build items; number 1 is the list of materials. */
function numbered(
  parts: readonly ThreeMfPart[],
  moves: readonly Triple[],
  colours: readonly string[],
): Numbered {
  const objects: Markup[] = [];
  const items: Markup[] = [];
  let last = 1;
  for (const [index, { name, bodies }] of parts.entries()) {
    const first = last + 1;
    for (const body of bodies) {
      const material = { pid: 1, pindex: colours.indexOf(colourOf(body)) };
      objects.push(
        element('object', { id: ++last, name: body.name, type: 'model', ...material }, meshXml(body.mesh)),
      );
    }
    if (bodies.length > 1) {
      const components = bodies.map((_, body) => element('component', { objectid: first + body }));
      objects.push(
        element('object', { id: ++last, name, type: 'model' }, element('components', {}, ...components)),
      );
    }
    items.push(element('item', { objectid: last, transform: moveText(moves[index]!) }));
  }
  return { objects, items };
}

/**
 * The model part of a 3MF file.
 *
 * @param title - What the file holds.
 * @param parts - In the order they are listed.
 * @param moves - Where each part goes on the bed. [mm], n = parts
 * @source 3MF Consortium, 3MF Core Specification 1.3, sections 3 to 5.
 * @check test/journeys/solidParts.test.ts (lib3mf, strict)
 */
export function modelXml(title: string, parts: readonly ThreeMfPart[], moves: readonly Triple[]): string {
  const colours = [...new Set(parts.flatMap(({ bodies }) => bodies.map(colourOf)))];
  const bases = colours.map((colour, index) =>
    element('base', { name: `material ${index + 1}`, displaycolor: colour }),
  );
  const { objects, items } = numbered(parts, moves, colours);
  const model = element(
    'model',
    { unit: 'millimeter', 'xml:lang': 'en-US', xmlns: CORE },
    element('metadata', { name: 'Title' }, title),
    element('metadata', { name: 'Application' }, 'vanewright'),
    element('resources', {}, joined([element('basematerials', { id: 1 }, ...bases), ...objects])),
    element('build', {}, ...items),
  );
  return `<?xml version="1.0" encoding="UTF-8"?>\n${model.html}\n`;
}
