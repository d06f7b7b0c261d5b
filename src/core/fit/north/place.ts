import type { Problem } from '../../error/index.ts';

/** A place on the earth. */
export interface Place {
  /** North positive. [deg], -90..90 */
  readonly latitudeDeg: number;
  /** East positive. [deg], -180..180 */
  readonly longitudeDeg: number;
}

/** What is wrong with a place, or nothing. */
export function placeProblems({ latitudeDeg, longitudeDeg }: Place, where: string): Problem[] {
  const problems: Problem[] = [];
  const add = (field: string, got: number, most: number): void => {
    if (Number.isFinite(got) && Math.abs(got) <= most) return;
    problems.push({
      code: 'fit/no-such-place',
      what: 'There is no such place on the earth.',
      where: `${where} › ${field}`,
      got: `${got} deg`,
      allowed: `-${most} to ${most} deg, north and east positive`,
      fix:
        field === 'latitudeDeg'
          ? 'Write 53.55 for a place in the north, -33.9 for one in the south.'
          : 'Write 10.0 for a place east of Greenwich, -3.2 for one west of it.',
    });
  };
  add('latitudeDeg', latitudeDeg, 90);
  add('longitudeDeg', longitudeDeg, 180);
  return problems;
}
