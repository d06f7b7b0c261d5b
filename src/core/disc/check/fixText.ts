import { buildCode, codeProblems, families, POSITIONS_RANGE, type CodeTable } from '../../codes/index.ts';
import { showMm } from '../../units/index.ts';
import type { DiscSpec } from '../discSpec.ts';
import { inspect } from './inspect.ts';
import { mend } from './mend.ts';

/** Fields of a disc that mending may change, with their values. [mm] */
function sizesOf(spec: DiscSpec): Map<string, number> {
  return new Map([
    ['disc.diameterMm', spec.diameterMm],
    ['disc.hubDiameterMm', spec.hubDiameterMm],
    ['disc.thicknessMm', spec.thicknessMm],
    ['disc.webMm', spec.webMm],
    ['disc.rimMm', spec.rimMm],
    ['disc.bore.diameterMm', spec.bore.diameterMm],
    ...(spec.bore.shape === 'd' ? [['disc.bore.acrossFlatMm', spec.bore.acrossFlatMm] as const] : []),
    ['disc.notch.widthMm', spec.notch.widthMm],
    ['disc.notch.depthMm', spec.notch.depthMm],
  ]);
}

function listText(parts: readonly string[]): string {
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}

/** Sizes that follow another where the file leaves them out; a fix names both, so that it holds as it was tried. */
const FOLLOWS: Readonly<Record<string, readonly string[]>> = {
  'disc.hubDiameterMm': ['disc.bore.diameterMm'],
  'disc.rimMm': ['disc.webMm'],
  'disc.notch.depthMm': ['disc.rimMm', 'disc.webMm'],
};

function changesTo(from: DiscSpec, to: DiscSpec): string[] {
  const before = sizesOf(from);
  const after = sizesOf(to);
  const isNew = (field: string): boolean => before.get(field) !== after.get(field);
  return [...after]
    .filter(([field]) => isNew(field) || (FOLLOWS[field] ?? []).some(isNew))
    .filter(([field]) => field !== 'disc.notch.depthMm' || to.notch.widthMm > 0)
    .map(([field, value]) => `${field} to ${showMm(value)}`);
}

/** A code of the same family, or `null` where it refuses the count. */
function sameFamily(code: CodeTable, positions: number): CodeTable | null {
  return codeProblems(code.family, positions).length === 0 ? buildCode(code.family, positions) : null;
}

/** True where the family's name and a count are all that the code was built from, without a search. */
function isPlainlyBuilt(code: CodeTable): boolean {
  if (code.search !== null || !families.some((family) => family.name === code.family)) return false;
  return sameFamily(code, code.positions)?.words.join() === code.words.join();
}

/** The same family at the largest even count below the code's that works; `null` when none does. */
function largestThatWorks(code: CodeTable, works: (smaller: CodeTable) => boolean): CodeTable | null {
  if (!isPlainlyBuilt(code)) return null;
  const workingAt = (half: number): CodeTable | null => {
    const smaller = sameFamily(code, 2 * half);
    return smaller && works(smaller) ? smaller : null;
  };
  let least = POSITIONS_RANGE.least / 2;
  let tooMany = Math.ceil(code.positions / 2);
  let largest = least < tooMany ? workingAt(least) : null;
  while (largest && tooMany - least > 1) {
    const middle = (least + tooMany) >> 1;
    const found = workingAt(middle);
    if (found) [least, largest] = [middle, found];
    else tooMany = middle;
  }
  return largest;
}

/** Fewer positions together with other sizes, where neither mends the disc alone. */
function fewerAndOtherSizes(code: CodeTable, spec: DiscSpec): string | null {
  const smaller = largestThatWorks(code, (candidate) => mend(candidate, spec) !== null);
  const mended = smaller && mend(smaller, spec);
  return mended && `Set ${listText([`need.positions to ${smaller.positions}`, ...changesTo(spec, mended)])}.`;
}

function lastResort(code: CodeTable): string {
  const constant = code.tracks.findIndex((track) => track.levels.length === 1);
  if (constant >= 0) return `Leave track ${constant} out of the code: it never changes.`;
  return 'Begin again from a disc that works: 32 positions on 80 mm, and change one number at a time.';
}

/**
 * One change of the instrument file that mends every fault of a disc, in words.
 *
 * @param code - Code to be laid on the disc.
 * @param spec - The faulty disc, with usable sizes. [mm]
 * @returns A sentence that names fields and values that work; each was tried before it is named.
 * @check src/core/disc/planDisc.test.ts (every proposal is planned again)
 */
export function fixText(code: CodeTable, spec: DiscSpec): string {
  const mended = mend(code, spec);
  const fewer = largestThatWorks(code, (smaller) => inspect(smaller, spec).faults.length === 0);
  const positions = fewer && `need.positions to ${fewer.positions}`;
  if (mended) {
    const sizes = listText(changesTo(spec, mended));
    return positions ? `Set ${sizes}; or ${positions}.` : `Set ${sizes}.`;
  }
  if (positions)
    return `With ${code.positions} positions no size up to the largest disc would do; set ${positions}.`;
  return fewerAndOtherSizes(code, spec) ?? lastResort(code);
}
