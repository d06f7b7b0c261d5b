import { buildCode, families, POSITIONS_RANGE, type CodeTable } from '../../codes/index.ts';
import { showMm } from '../../units/index.ts';
import type { DiscSpec } from '../discSpec.ts';
import { inspect } from './inspect.ts';
import { mend } from './mend.ts';

/** Fields of a disc that mending may change, with their values. [mm] */
function sizesOf(spec: DiscSpec): Map<string, number> {
  return new Map([
    ['disc.diameterMm', spec.diameterMm],
    ['disc.hubDiameterMm', spec.hubDiameterMm],
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

function changesText(from: DiscSpec, to: DiscSpec): string {
  const before = sizesOf(from);
  const changed = [...sizesOf(to)].filter(([field, value]) => before.get(field) !== value);
  return listText(changed.map(([field, value]) => `${field} to ${showMm(value)}`));
}

/** Most positions, even, that the same family can lay on the disc as it is; `null` when not even 2 do. */
function mostPositions(code: CodeTable, spec: DiscSpec): number | null {
  if (!families.some((family) => family.name === code.family)) return null;
  const works = (positions: number) => inspect(buildCode(code.family, positions), spec).faults.length === 0;
  let least = POSITIONS_RANGE.least / 2;
  if (!works(2 * least)) return null;
  let tooMany = Math.ceil(code.positions / 2);
  while (tooMany - least > 1) {
    const middle = (least + tooMany) >> 1;
    if (works(2 * middle)) least = middle;
    else tooMany = middle;
  }
  return 2 * least;
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
  const fewer = mostPositions(code, spec);
  const sizes = mended && `Set ${changesText(spec, mended)}`;
  const positions = fewer !== null && `need.positions to ${fewer}`;
  if (sizes) return positions ? `${sizes}; or ${positions}.` : `${sizes}.`;
  if (positions) return `Set ${positions}: no size up to the largest disc would do.`;
  const constant = code.tracks.findIndex((track) => track.levels.length === 1);
  if (constant >= 0) return `Leave track ${constant} out of the code: it never changes.`;
  return 'Begin again from a disc that works: 32 positions on 80 mm, and change one number at a time.';
}
