import { arcPlaces, type Loop } from './loops.ts';

/** Centre, first angle and turn of a circular arc given by its ends. @source SVG 1.1 (Second Edition), appendix F.6.5 */
function arcBetween(
  [x0, y0]: readonly [number, number],
  [x1, y1]: readonly [number, number],
  given: number,
  flags: { readonly large: boolean; readonly sweep: boolean },
): [number, number][] {
  const half = Math.hypot(x1 - x0, y1 - y0) / 2;
  const radius = Math.max(given, half);
  const side = flags.large === flags.sweep ? -1 : 1;
  const rise = (side * Math.sqrt(radius ** 2 - half ** 2)) / (2 * half);
  const centre: [number, number] = [(x0 + x1) / 2 - rise * (y1 - y0), (y0 + y1) / 2 + rise * (x1 - x0)];
  const start = Math.atan2(y0 - centre[1], x0 - centre[0]);
  const end = Math.atan2(y1 - centre[1], x1 - centre[0]);
  const full = 2 * Math.PI;
  const turn = flags.sweep ? (end - start + full) % full : -((start - end + full) % full);
  return arcPlaces(centre, radius, start, turn);
}

function loopsOf(data: string): Loop[] {
  const loops: [number, number][][] = [];
  for (const [, letter, text] of data.matchAll(/([MLAZ])([^MLAZ]*)/g)) {
    const numbers = text!
      .split(/[\s,]+/)
      .filter(Boolean)
      .map(Number);
    const loop = loops.at(-1);
    const to = numbers.slice(-2) as [number, number];
    if (letter === 'M') loops.push([to]);
    else if (letter === 'L') loop!.push(to);
    else if (letter === 'A') {
      const flags = { large: numbers[3] === 1, sweep: numbers[4] === 1 };
      loop!.push(...arcBetween(loop!.at(-1)!, to, numbers[0]!, flags));
    }
  }
  // The picture's y goes down.
  return loops.map((loop) => loop.map(([x, y]) => [x, -y]));
}

/**
 * Closed lines of the paths of an SVG drawing, by their ids. [mm], y up
 *
 * @source W3C, SVG 1.1 (Second Edition), 8.3.
 */
export function readSvgLoops(text: string): Map<string, Loop[]> {
  const paths = [...text.matchAll(/<path id="([^"]*)" d="([^"]*)"/g)];
  return new Map(paths.map(([, id, data]) => [id!, loopsOf(data!)]));
}
