import { formOf, type DiscPlan } from '../../disc/index.ts';
import { PATTERN_MARK } from '../pdf/trueSize.ts';
import { byLoops, type LayerNames, type ShownLevels } from './byLoops.ts';
import { readPdfSheets } from './pdf/pdfSheets.ts';

const PATTERN = 'pattern';

/** On a sheet, levels are told by their colours. */
function namesOf(plan: DiscPlan): LayerNames {
  const form = formOf(plan.spec);
  const colours = 'colours' in form ? (form.colours ?? []) : [];
  return { level: (level) => colours[level]?.toLowerCase() ?? '', pattern: () => PATTERN };
}

/**
 * What the sheets of a disc show where they have its true size, all of them together.
 *
 * @param plan - What they should show.
 * @param bytes - A PDF.
 * @returns `null` where no sheet shows the pattern; sheets that overlap and differ show several levels.
 */
export function shownBySheets(plan: DiscPlan, bytes: Uint8Array): ShownLevels | null {
  const names = namesOf(plan);
  const tiles = readPdfSheets(bytes, PATTERN_MARK).flatMap(({ pattern }) => {
    const [first, ...more] = pattern;
    if (!first) return [];
    const sets = new Map(pattern.map(({ fill, loops }) => [more.length > 0 && fill ? fill : PATTERN, loops]));
    const levels = byLoops(plan, sets, names);
    return levels ? [{ levels, shows: first.shows }] : [];
  });
  if (tiles.length === 0) return null;
  return (x, y) => [...new Set(tiles.flatMap(({ levels, shows }) => (shows(x, y) ? levels(x, y) : [])))];
}
