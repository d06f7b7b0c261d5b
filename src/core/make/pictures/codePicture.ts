import { runLengthsDeg, type CodeTable, type Level, type Track } from '../../codes/index.ts';
import { AXIS, sheetPoint, type RingSector } from '../../disc/index.ts';
import { element, joined, label, look, picture, type Markup } from '../../report/index.ts';
import { svgPen } from '../svg/svgPen.ts';

/** Sizes of the picture. [user units] */
const SIZE = { rim: 100, hub: 34, gap: 2, margin: 12, dot: 5.2 } as const;

/** How each level is filled; the third has a pattern too, so that it is told apart without colour. */
const fills: Record<Level, string> = { 0: look.material, 1: look.light, 2: 'url(#third)' };

function thirdLevel(): Markup {
  const stripe = element('path', { d: 'M0 4L4 0', stroke: look.accent, 'stroke-width': 1.1 });
  const ground = element('rect', { width: 4, height: 4, fill: look.accentTint });
  return element(
    'defs',
    {},
    element('pattern', { id: 'third', width: 4, height: 4, patternUnits: 'userSpaceOnUse' }, ground, stripe),
  );
}

/** Outline of a piece of a ring. */
function sectorPath({ innerRadiusMm, outerRadiusMm, fromDeg, toDeg }: RingSector): string {
  const { pen, pathData } = svgPen();
  pen.moveTo(sheetPoint(fromDeg, outerRadiusMm));
  pen.arcTo(sheetPoint(toDeg, outerRadiusMm), AXIS, true);
  pen.lineTo(sheetPoint(toDeg, innerRadiusMm));
  pen.arcTo(sheetPoint(fromDeg, innerRadiusMm), AXIS, false);
  pen.close();
  return pathData();
}

/** Radii of a track; the last one of the code lies outside. */
function band(track: number, tracks: number): { inner: number; outer: number } {
  const width = (SIZE.rim - 3 - SIZE.hub) / tracks;
  const inner = SIZE.hub + track * width + SIZE.gap / 2;
  return { inner, outer: inner + width - SIZE.gap };
}

function ring(track: Track, index: number, tracks: number): Markup {
  const { inner, outer } = band(index, tracks);
  const lengths = runLengthsDeg(track);
  const runs = track.levels.map((level, run) => {
    const fromDeg = track.startsDeg[run]!;
    // Two halves, since one arc cannot span a whole turn.
    const spans =
      lengths[run]! >= 360
        ? [[0, 180] as const, [180, 360] as const]
        : [[fromDeg, fromDeg + lengths[run]!] as const];
    return joined(
      spans.map(([from, to]) =>
        element('path', {
          d: sectorPath({ innerRadiusMm: inner, outerRadiusMm: outer, fromDeg: from, toDeg: to }),
          fill: fills[level],
        }),
      ),
    );
  });
  return joined(runs);
}

/**
 * A code as a plain disc, whatever the process: each track a ring of its levels, each channel a numbered dot where it looks.
 *
 * @param table - Any code table; three levels are shown as land, window and a striped third.
 */
export function codePicture(table: CodeTable): Markup {
  const half = SIZE.rim + SIZE.margin;
  const tracks = table.tracks.length;
  const dots = table.channels.map(({ track, angleDeg }, channel) => {
    const { inner, outer } = band(track, tracks);
    const { xMm, yMm } = sheetPoint(angleDeg, (inner + outer) / 2);
    const r = Math.min(SIZE.dot, (outer - inner) / 2);
    return joined([
      element('circle', { cx: xMm, cy: -yMm, r, fill: look.accent, stroke: look.paper, 'stroke-width': 0.8 }),
      label(
        String(channel),
        { x: xMm, y: r * 0.42 - yMm },
        { 'text-anchor': 'middle', 'font-size': r * 1.2, 'font-weight': 700, fill: look.paper },
      ),
    ]);
  });
  const title = `${table.family}: ${table.positions} positions, ${tracks} ${tracks === 1 ? 'track' : 'tracks'}, ${table.channels.length} channels`;
  return picture(
    { width: 2 * half, height: 2 * half, origin: [-half, -half], title },
    thirdLevel(),
    element('circle', { r: SIZE.rim, fill: look.material }),
    ...table.tracks.map((track, index) => ring(track, index, tracks)),
    element('circle', { r: 7, fill: look.paper }),
    ...dots,
  );
}
