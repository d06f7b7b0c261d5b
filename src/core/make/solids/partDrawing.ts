import { element, label, look, picture, type Markup } from '../../report/index.ts';
import { showMm, showNumber } from '../../units/index.ts';
import { meshBox, type Triple } from './meshFacts.ts';
import { sharpEdges, type Edge } from './sharpEdges.ts';
import type { Solid } from './solid.ts';

/** A size of a part, by its name. */
export interface Size {
  readonly name: string;
  readonly mm: number;
}

/** One way of looking at a part: which axes run right and up on the sheet, and which comes towards the eye. */
interface View {
  readonly title: string;
  readonly right: (place: Triple) => number;
  readonly up: (place: Triple) => number;
  readonly eye: Triple;
}

const top: View = { title: 'from above', right: ([x]) => x, up: ([, y]) => y, eye: [0, 0, 1] };
const front: View = { title: 'from the front', right: ([x]) => x, up: ([, , z]) => z, eye: [0, -1, 0] };
const side: View = { title: 'from the right', right: ([, y]) => y, up: ([, , z]) => z, eye: [1, 0, 0] };

/** Paper a view is scaled into, and the room round it. [px] */
const [VIEW_PX, GAP_PX, TEXT_PX] = [260, 56, 13];

/** Where a view lies on the paper. */
interface Frame {
  readonly view: View;
  readonly left: number;
  readonly bottom: number;
  readonly scale: number;
  readonly low: Triple;
  readonly high: Triple;
}

function viewLines(edges: readonly Edge[], { view, left, bottom, scale, low }: Frame): Markup[] {
  const at = (place: Triple): string =>
    `${(left + (view.right(place) - view.right(low)) * scale).toFixed(2)} ${(bottom - (view.up(place) - view.up(low)) * scale).toFixed(2)}`;
  const path = (shown: readonly Edge[]): string =>
    [
      ...new Set(
        shown.map(({ from, to }) => [at(from), at(to)].sort()).map(([a, b]) => (a === b ? '' : `M${a}L${b}`)),
      ),
    ].join('');
  const isContour = ({ facings }: Edge): boolean => {
    const [a, b] = facings.map(
      (facing) => facing[0] * view.eye[0] + facing[1] * view.eye[1] + facing[2] * view.eye[2],
    );
    return a! > 1e-3 !== b! > 1e-3;
  };
  const contour = edges.filter(isContour);
  const hidden = edges.filter((edge) => edge.isSharp && !isContour(edge));
  return [
    element('path', { d: path(hidden), fill: 'none', stroke: look.line, 'stroke-width': 0.6 }),
    element('path', { d: path(contour), fill: 'none', stroke: look.ink, 'stroke-width': 1 }),
  ];
}

/** A dimension line below a view and one at its left, with their numbers. */
function dimensions({ view, left, bottom, scale, low, high }: Frame): Markup[] {
  const [width, height] = [view.right(high) - view.right(low), view.up(high) - view.up(low)];
  const [right, upper] = [left + width * scale, bottom - height * scale];
  const [y, x] = [bottom + 14, left - 14];
  const stroke = { stroke: look.accent, 'stroke-width': 0.8 };
  const ticks = [
    `M${left} ${y - 4}V${y + 4}M${right} ${y - 4}V${y + 4}M${left} ${y}H${right}`,
    `M${x - 4} ${bottom}H${x + 4}M${x - 4} ${upper}H${x + 4}M${x} ${bottom}V${upper}`,
  ];
  const middleY = (bottom + upper) / 2;
  return [
    element('path', { d: ticks.join(''), fill: 'none', ...stroke }),
    label(showNumber(width, 2), { x: (left + right) / 2, y: y + 14 }, { 'text-anchor': 'middle' }),
    label(
      showNumber(height, 2),
      { x: x - 5, y: middleY },
      { 'text-anchor': 'middle', transform: `rotate(-90 ${(x - 5).toFixed(2)} ${middleY.toFixed(2)})` },
    ),
    label(view.title, { x: left, y: upper - 8 }, { fill: look.faintInk }),
  ];
}

/** Views side by side at one scale: from above, from the front below it, from the right beside that. */
function frames(low: Triple, high: Triple): { frames: Frame[]; width: number; height: number } {
  const [x, y, z] = [high[0] - low[0], high[1] - low[1], high[2] - low[2]];
  const scale = Math.min(VIEW_PX / Math.max(x, y), (2.2 * VIEW_PX) / (x + y), VIEW_PX / z);
  const left = GAP_PX;
  const beside = left + x * scale + 1.4 * GAP_PX;
  const above = GAP_PX + y * scale;
  const below = above + 1.4 * GAP_PX + z * scale;
  const frame = (view: View, at: number, bottom: number): Frame => ({
    view,
    left: at,
    bottom,
    scale,
    low,
    high,
  });
  return {
    frames: [frame(top, left, above), frame(front, left, below), frame(side, beside, below)],
    width: beside + y * scale + GAP_PX,
    height: below + GAP_PX,
  };
}

/**
 * A drawing of one part as it lies on the printer's bed: three views at one scale, overall and main sizes.
 *
 * Dark lines bound what the eye sees from that side; pale ones are edges inside. Not to be measured: the numbers count.
 *
 * @param solid - The part.
 * @param sizes - Main sizes by name, as they shall come out. [mm]
 * @param notes - Sentences below, such as what to buy or how to fit.
 */
export function partDrawing(solid: Solid, sizes: readonly Size[], notes: readonly string[] = []): string {
  const { low, high } = meshBox(solid.mesh);
  const layout = frames(low, high);
  const edges = sharpEdges(solid.mesh);
  const words = [...sizes.map(({ name, mm }) => `${name}: ${showMm(mm)}`), ...notes];
  const width = Math.max(layout.width, 24 + 6.6 * Math.max(20, ...words.map((line) => line.length)));
  const title = `${solid.name}, drawn in millimetres`;
  return picture(
    { width: Math.ceil(width), height: Math.ceil(layout.height + TEXT_PX * (words.length + 2.5)), title },
    label(title, { x: 16, y: 22 }, { 'font-size': 15, 'font-weight': 700 }),
    ...layout.frames.flatMap((frame) => [...viewLines(edges, frame), ...dimensions(frame)]),
    ...words.map((line, index) => label(line, { x: 16, y: layout.height + TEXT_PX * (index + 1.5) })),
  ).html;
}
