import { materials } from '../../../disc/index.ts';
import type { Problem } from '../../../error/index.ts';
import type { MadeFile } from '../../madeFile.ts';
import { disagreement } from '../disagreement.ts';
import { readCsv } from './readCsv.ts';
import type { StlFacts } from './solidProblems.ts';

/** Half of the last digit of a mass in the list. [g] */
const MASS_WITHIN_G = 0.006;

function shapeProblems(path: string, rows: readonly string[][]): Problem[] {
  const what = 'A table was read back and is not one.';
  const columns = rows[0]?.length ?? 0;
  if (rows.length < 2 || columns < 2)
    return [disagreement(path, what, `${rows.length} rows`, 'a heading and a row')];
  const odd = rows.findIndex((row) => row.length !== columns);
  if (odd < 0) return [];
  return [disagreement(`${path}, row ${odd + 1}`, what, `${rows[odd]!.length} cells`, `${columns} cells`)];
}

/** Masses that are not those of the solids that are printed. */
function massProblems(path: string, rows: readonly string[][], solids: StlFacts): Problem[] {
  return rows.slice(1).flatMap(([, part, mass]): Problem[] => {
    const solid = solids.get(`prints/${part}`);
    if (!solid) return [];
    const wantedG = solid.volumeMm3 * materials.fdm.densityKgPerM3 * 1e-6;
    // Corners are rounded in the file: of a large part that is more than the last digit.
    const withinG = MASS_WITHIN_G + 1e-4 * wantedG;
    if (Math.abs(Number(mass) - wantedG) <= withinG) return [];
    const what = 'The list of masses disagrees with a solid that was read back.';
    return [disagreement(`${path}, ${part}`, what, `${mass} g`, `${wantedG.toFixed(2)} g`)];
  });
}

/**
 * Tables that no spreadsheet would open as meant, and masses that are not those of the solids.
 *
 * @param files - A whole result; others are passed over.
 * @param solids - What its STL files hold.
 * @check src/core/make/readBack/readBundle.test.ts
 */
export function tableProblems(files: readonly MadeFile[], solids: StlFacts): Problem[] {
  return files.flatMap(({ path, content }) => {
    if (!path.endsWith('.csv') || typeof content !== 'string') return [];
    const rows = readCsv(content);
    const ofShape = shapeProblems(path, rows);
    return ofShape.length > 0 || path !== 'masses.csv' ? ofShape : massProblems(path, rows, solids);
  });
}
