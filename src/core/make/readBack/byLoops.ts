import type { Level } from '../../codes/index.ts';
import { formOf, type DiscPlan } from '../../disc/index.ts';
import { insideOf, type Loop } from './loops.ts';

/** Levels that a file shows at a place: one, where it is as it should be. [mm], y up */
export type ShownLevels = (x: number, y: number) => readonly Level[];

/** Level of windows and of lands, for forms that show only these. */
export function twoLevels({ spec }: DiscPlan, isWindow: (x: number, y: number) => boolean): ShownLevels {
  const [window, land]: [Level, Level] = [spec.windowLevel, spec.windowLevel === 1 ? 0 : 1];
  return (x, y) => [isWindow(x, y) ? window : land];
}

/** Levels by loops: one set for windows and lands, or one a level; `null` where no set is the pattern. */
export function byLoops(
  plan: DiscPlan,
  sets: ReadonlyMap<string, readonly Loop[]>,
  names: LayerNames,
): ShownLevels | null {
  const form = formOf(plan.spec);
  const levels = ([0, 1, 2] as const).flatMap((level) => {
    const loops = sets.get(names.level(level));
    return loops ? [{ level, isInside: insideOf(loops) }] : [];
  });
  if (levels.length > 0) {
    return (x, y) => levels.filter(({ isInside }) => isInside(x, y)).map(({ level }) => level);
  }
  const loops = sets.get(names.pattern(form.kind));
  if (!loops) return null;
  const isInside = insideOf(loops);
  // What is drawn is land, but for engraving where windows lie low, and for copper that counts as light.
  const drawsWindows =
    (form.kind === 'relief' && form.raised === 'dark') || (form.kind === 'copper' && form.copper === 'light');
  return twoLevels(plan, (x, y) => isInside(x, y) === drawsWindows);
}

/** How a format names its layers. */
export interface LayerNames {
  level(level: Level): string;
  pattern(kind: string): string;
}
