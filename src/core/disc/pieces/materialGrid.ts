import type { Level } from '../../codes/index.ts';
import type { DiscPlan } from '../discPlan.ts';
import { isWindow } from '../layout/windows.ts';
import { fieldGrid, fieldOf, wholeField } from './field.ts';
import type { PolarGrid } from './polarGrid.ts';

/**
 * The material of a disc, from the bore's circle to the rim, as exact polar cells; on film, the dark print.
 *
 * Row 0 is the hub. A flat of the bore lies inside its circle and is left out.
 *
 * @param plan - A disc plan, with or without ribs.
 */
export function materialGrid(plan: DiscPlan): PolarGrid {
  const field = fieldOf(plan);
  const windows = plan.strip
    ? field.sectorsWhere((level) => isWindow(level, plan.spec))
    : plan.tracks.flatMap((track) => track.windows);
  return fieldGrid(field, windows, plan.ribs);
}

/** The disc without any pattern: its edge, notch and bore; or the whole strip. */
export function blankGrid(plan: DiscPlan): PolarGrid {
  return fieldGrid(fieldOf(plan), [], []);
}

/** Heights of the cells of a face with two: 0 for air, then the lower one, then the higher. */
export const LOW = 1;
export const HIGH = 2;

/**
 * A face of two heights: low where a test passes, high everywhere else; or the other way round.
 *
 * @param isLow - Levels that lie low; the ground between the tracks lies high.
 * @param way - `raised` turns it over: those levels stand up from the ground.
 */
export function steppedGrid(
  plan: DiscPlan,
  isLow: (level: Level) => boolean,
  way: 'sunk' | 'raised' = 'sunk',
): PolarGrid {
  const field = fieldOf(plan);
  const sectors = field.sectorsWhere(isLow);
  const ground = fieldGrid(field, sectors, []);
  const all = fieldGrid(field, sectors, sectors);
  const filled = all.filled.map((cell, index) => {
    const isHigh = (ground.filled[index] === 1) === (way === 'sunk');
    return cell * (isHigh ? HIGH : LOW);
  });
  return { ...all, filled };
}

/** The windows of a disc as if they were material: what is light where the pattern is printed or etched light. */
export function windowGrid(plan: DiscPlan): PolarGrid {
  const field = fieldOf(plan);
  return fieldGrid(
    field,
    [wholeField(field)],
    field.sectorsWhere((level) => isWindow(level, plan.spec)),
  );
}

/** Level of the ground between the tracks: the lowest that is no window. */
export function groundLevel({ spec }: DiscPlan): Level {
  return spec.windowLevel === 0 ? 1 : 0;
}

/** How many levels a disc shows. */
export function levelCountOf({ code }: Pick<DiscPlan, 'code'>): 2 | 3 {
  return code.tracks.some(({ levelCount }) => levelCount === 3) ? 3 : 2;
}

/**
 * Where a disc shows one level: the ground level everywhere that no other is, every other on its tracks only.
 *
 * @param level - Below `levelCountOf`.
 */
export function levelGrid(plan: DiscPlan, level: Level): PolarGrid {
  const field = fieldOf(plan);
  if (level === groundLevel(plan))
    return fieldGrid(
      field,
      field.sectorsWhere((other) => other !== level),
      [],
    );
  return fieldGrid(
    field,
    [wholeField(field)],
    field.sectorsWhere((other) => other === level),
  );
}
