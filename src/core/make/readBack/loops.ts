// Reads files back apart from what drew them: nothing here comes from the disc step or from a pen.

/** A closed line through places, as many as it takes to follow its arcs. [mm], y up */
export type Loop = readonly (readonly [x: number, y: number])[];

/** Farthest between two places along an arc. [rad] At 300 mm this strays 0.003 mm. */
const ARC_STEP = Math.PI / 720;

/** Places along an arc after its first, by centre, radius, first angle and turn. [mm], [rad] */
export function arcPlaces(
  centre: readonly [number, number],
  radius: number,
  start: number,
  turn: number,
): [number, number][] {
  const steps = Math.max(1, Math.ceil(Math.abs(turn) / ARC_STEP));
  return Array.from({ length: steps }, (_, step) => {
    const angle = start + (turn * (step + 1)) / steps;
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
  });
}

/** Bands of height, so that a place is tried only against the sides that span its own. */
const BANDS = 400;

type Side = readonly [x0: number, y0: number, x1: number, y1: number];

/**
 * A test whether a place lies inside an odd number of loops.
 *
 * @param loops - Closed lines; order and direction do not matter.
 */
export function insideOf(loops: readonly Loop[]): (x: number, y: number) => boolean {
  const sides = loops.flatMap((loop) =>
    loop.map(([x0, y0], i): Side => [x0, y0, ...loop[(i + 1) % loop.length]!] as unknown as Side),
  );
  let [low, high] = [Infinity, -Infinity];
  for (const [, y0, , y1] of sides) [low, high] = [Math.min(low, y0, y1), Math.max(high, y0, y1)];
  const bandOf = (y: number): number =>
    Math.max(0, Math.min(BANDS - 1, Math.floor(((y - low) / (high - low)) * BANDS)));
  const bands: Side[][] = Array.from({ length: BANDS }, () => []);
  for (const side of sides) {
    const [first, last] = [bandOf(Math.min(side[1], side[3])), bandOf(Math.max(side[1], side[3]))];
    for (let band = first; band <= last; band++) bands[band]!.push(side);
  }
  return (x, y) => {
    let isInside = false;
    for (const [x0, y0, x1, y1] of bands[bandOf(y)]!) {
      if (y0 > y !== y1 > y && x < x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)) isInside = !isInside;
    }
    return isInside;
  };
}
