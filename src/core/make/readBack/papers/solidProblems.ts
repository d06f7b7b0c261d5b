import type { Problem } from '../../../error/index.ts';
import { showNumber } from '../../../units/index.ts';
import type { MadeFile } from '../../madeFile.ts';
import { disagreement } from '../disagreement.ts';
import { readStlTriangles, readThreeMfBodies } from '../readSolid.ts';
import { solidFacts, type SolidFacts } from './solidFacts.ts';

/** How far the same body may differ in two formats: both round its corners, to 32 bits and to 5 decimals. [-] */
const SAME_VOLUME = 1e-3;

const cubic = (volumeMm3: number): string => `${showNumber(volumeMm3, 3)} mm³`;

function bodyProblems(where: string, { isClosed, volumeMm3, triangles }: SolidFacts): Problem[] {
  const what = 'A solid was read back and is no body that can be printed.';
  if (triangles === 0) return [disagreement(where, what, 'no triangle', 'a closed surface')];
  if (!isClosed) return [disagreement(where, what, 'a surface with a gap', 'a closed surface')];
  if (volumeMm3 > 0) return [];
  return [disagreement(where, what, cubic(volumeMm3), 'a volume above 0')];
}

/** Solids of one folder, by the names of their files. */
export type StlFacts = ReadonlyMap<string, SolidFacts>;

/** Facts of every STL of a result, by its path without the ending. */
export function stlFacts(files: readonly MadeFile[]): StlFacts {
  return new Map(
    files.flatMap(({ path, content }) =>
      path.endsWith('.stl') && typeof content !== 'string'
        ? [[path.slice(0, -4), solidFacts(readStlTriangles(content))] as const]
        : [],
    ),
  );
}

function threeMfProblems({ path, content }: MadeFile, solids: StlFacts): Problem[] {
  if (typeof content === 'string') return [];
  const folder = path.slice(0, path.lastIndexOf('/') + 1);
  const bodies = readThreeMfBodies(content);
  const beside = [...solids].filter(
    ([name]) => name.startsWith(folder) && !name.slice(folder.length).includes('/'),
  );
  const what = 'A 3MF was read back and does not hold the solids beside it.';
  return beside.flatMap(([name, stl]): Problem[] => {
    const bodyName = name.slice(folder.length);
    const where = `${path} › ${bodyName}`;
    const body = bodies.get(bodyName);
    if (!body) return [disagreement(where, what, 'no such body', `the body of ${name}.stl`)];
    const facts = solidFacts(body);
    const wrong = bodyProblems(where, facts);
    if (wrong.length > 0) return wrong;
    if (Math.abs(facts.volumeMm3 / stl.volumeMm3 - 1) <= SAME_VOLUME) return [];
    return [disagreement(where, what, cubic(facts.volumeMm3), `${cubic(stl.volumeMm3)}, as in ${name}.stl`)];
  });
}

/**
 * Solids that no printer could make, and 3MF files that do not hold the solids beside them.
 *
 * @param files - A whole result; others are passed over.
 * @param solids - What its STL files hold.
 * @check src/core/make/readBack/readBundle.test.ts
 */
export function solidProblems(files: readonly MadeFile[], solids: StlFacts): Problem[] {
  const ofBodies = [...solids].flatMap(([name, facts]) => bodyProblems(`${name}.stl`, facts));
  const threeMf = files.filter(({ path }) => path.endsWith('.3mf'));
  return [...ofBodies, ...threeMf.flatMap((file) => threeMfProblems(file, solids))];
}
