// Reads the drawings back. Shares no code with src: its own reading of the SVG standard, section 8.3 and appendix F.6.5.

/** A piece of an outline that only rises or only falls, so that a level line meets it once. */
interface Slope {
  readonly lowY: number;
  readonly highY: number;
  /** Where the piece is at a height between its ends. */
  xAt(y: number): number;
}

/** A drawing, in millimetres, y down as SVG has it. */
export interface ReadSvg {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly viewBox: readonly number[];
  readonly title: string;
  readonly desc: string;
  readonly fill: string;
  readonly subpaths: number;
  readonly arcs: number;
  readonly lines: number;
  /** Area inside by the even-odd rule of outlines that run opposite ways, from a line integral. [mm²] */
  readonly signedAreaMm2: number;
  /** True inside the outlines, by the even-odd rule. */
  isInside(x: number, y: number): boolean;
}

function attribute(text: string, name: string): string {
  const found = new RegExp(`\\s${name}="([^"]*)"`).exec(text);
  if (!found) throw new Error(`no attribute ${name} in ${text.slice(0, 80)}`);
  return found[1]!;
}

function lineSlopes(x0: number, y0: number, x1: number, y1: number): Slope[] {
  if (y0 === y1) return [];
  return [
    { lowY: Math.min(y0, y1), highY: Math.max(y0, y1), xAt: (y) => x0 + ((y - y0) / (y1 - y0)) * (x1 - x0) },
  ];
}

interface Arc {
  readonly cx: number;
  readonly cy: number;
  readonly r: number;
  readonly start: number;
  readonly sweep: number;
}

/** Centre of an arc given by its ends: SVG 1.1, F.6.5, for a circle. */
function arcOf(
  x0: number,
  y0: number,
  r0: number,
  large: number,
  sweepFlag: number,
  x1: number,
  y1: number,
): Arc {
  const halfX = (x0 - x1) / 2;
  const halfY = (y0 - y1) / 2;
  const half = Math.hypot(halfX, halfY);
  const r = Math.max(r0, half); // F.6.6: a radius too small is scaled up
  const factor = (large === sweepFlag ? -1 : 1) * Math.sqrt(Math.max(0, r * r - half * half) / (half * half));
  const cx = factor * halfY + (x0 + x1) / 2;
  const cy = -factor * halfX + (y0 + y1) / 2;
  const start = Math.atan2(y0 - cy, x0 - cx);
  let sweep = Math.atan2(y1 - cy, x1 - cx) - start;
  if (sweepFlag === 1 && sweep < 0) sweep += 2 * Math.PI;
  if (sweepFlag === 0 && sweep > 0) sweep -= 2 * Math.PI;
  return { cx, cy, r, start, sweep };
}

/** Cuts an arc at its highest and lowest points. */
function arcSlopes({ cx, cy, r, start, sweep }: Arc, y0: number, y1: number): Slope[] {
  const cuts = [0, 1];
  const [low, high] = [Math.min(start, start + sweep), Math.max(start, start + sweep)];
  for (let k = -4; k <= 4; k++) {
    const peak = Math.PI / 2 + k * Math.PI;
    if (peak > low && peak < high) cuts.push((peak - start) / sweep);
  }
  cuts.sort((a, b) => a - b);
  const yAt = (t: number) => (t === 0 ? y0 : t === 1 ? y1 : cy + r * Math.sin(start + sweep * t));
  return cuts.slice(1).flatMap((to, i) => {
    const from = cuts[i]!;
    const [a, b] = [yAt(from), yAt(to)];
    const side = Math.cos(start + sweep * ((from + to) / 2)) < 0 ? -1 : 1;
    const xAt = (y: number) => cx + side * Math.sqrt(Math.max(0, r * r - (y - cy) ** 2));
    return a === b ? [] : [{ lowY: Math.min(a, b), highY: Math.max(a, b), xAt }];
  });
}

/** Twice the area between an arc and the axis, by the line integral of x dy - y dx. */
function arcIntegral({ cx, cy, r, start, sweep }: Arc): number {
  const end = start + sweep;
  return (
    r * r * sweep + cx * r * (Math.sin(end) - Math.sin(start)) - cy * r * (Math.cos(end) - Math.cos(start))
  );
}

/** Numbers of one path command; flags of an arc are written apart, as our files do. */
function* commands(d: string): Generator<[string, number[]]> {
  for (const [, letter, numbers] of d.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
    yield [letter!, (numbers!.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number)];
  }
}

/** Bands of y, so that a place is tried only against the pieces that span its height. */
const BANDS = 300;

/** The even-odd rule: a place is inside when a line from it to the right is crossed an odd number of times. */
function evenOdd(slopes: readonly Slope[]): (x: number, y: number) => boolean {
  const low = slopes.reduce((least, { lowY }) => Math.min(least, lowY), Infinity);
  const high = slopes.reduce((most, { highY }) => Math.max(most, highY), -Infinity);
  const bandOf = (y: number) =>
    Math.min(BANDS - 1, Math.max(0, Math.floor(((y - low) / (high - low)) * BANDS)));
  const bands: Slope[][] = Array.from({ length: BANDS }, () => []);
  for (const slope of slopes) {
    for (let band = bandOf(slope.lowY); band <= bandOf(slope.highY); band++) bands[band]!.push(slope);
  }
  return (x, y) => {
    let crossings = 0;
    for (const { lowY, highY, xAt } of bands[bandOf(y)]!)
      if (lowY <= y && y < highY && xAt(y) > x) crossings++;
    return crossings % 2 === 1;
  };
}

/** Reads one SVG file that holds a path with an id, `disc` unless told. Throws on any command it does not know. */
export function readSvg(text: string, id = 'disc'): ReadSvg {
  const root = /<svg[^>]*>/.exec(text)![0];
  const path = new RegExp(`<path[^>]*id="${id}"[^>]*>`).exec(text)![0];
  const slopes: Slope[] = [];
  const count = { subpaths: 0, arcs: 0, lines: 0 };
  let [x, y, startX, startY, twiceArea] = [0, 0, 0, 0, 0];
  const lineTo = (toX: number, toY: number): void => {
    slopes.push(...lineSlopes(x, y, toX, toY));
    twiceArea += x * toY - toX * y;
    [x, y] = [toX, toY];
  };
  for (const [letter, n] of commands(attribute(path, 'd'))) {
    if (letter === 'M') {
      [x, y, startX, startY] = [n[0]!, n[1]!, n[0]!, n[1]!];
      count.subpaths++;
    } else if (letter === 'L') {
      lineTo(n[0]!, n[1]!);
      count.lines++;
    } else if (letter === 'A') {
      if (n.length !== 7 || n[0] !== n[1] || n[2] !== 0)
        throw new Error(`not a circular arc: ${n.join(' ')}`);
      const arc = arcOf(x, y, n[0]!, n[3]!, n[4]!, n[5]!, n[6]!);
      slopes.push(...arcSlopes(arc, y, n[6]!));
      twiceArea += arcIntegral(arc);
      [x, y] = [n[5]!, n[6]!];
      count.arcs++;
    } else if (letter === 'Z') {
      lineTo(startX, startY);
    } else {
      throw new Error(`unknown path command ${letter}`);
    }
  }
  return {
    ...count,
    widthMm: Number(/^([\d.]+)mm$/.exec(attribute(root, 'width'))![1]),
    heightMm: Number(/^([\d.]+)mm$/.exec(attribute(root, 'height'))![1]),
    viewBox: attribute(root, 'viewBox').split(' ').map(Number),
    title: /<title[^>]*>([^<]*)</.exec(text)![1]!,
    desc: /<desc[^>]*>([^<]*)</.exec(text)![1]!,
    fill: attribute(path, 'fill'),
    signedAreaMm2: -twiceArea / 2, // y is down: turn the sign so that an outline against the clock counts up
    isInside: evenOdd(slopes),
  };
}
