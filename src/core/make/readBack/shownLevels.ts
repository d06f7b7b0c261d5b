import type { Level } from '../../codes/index.ts';
import { formOf, type DiscPlan } from '../../disc/index.ts';
import type { MadeFile } from '../madeFile.ts';
import { byLoops, twoLevels, type LayerNames, type ShownLevels } from './byLoops.ts';
import { readDxfLoops } from './readDxfLoops.ts';
import { readStlTriangles, readThreeMfBodies, topOf, type Triangles } from './readSolid.ts';
import { readSvgLoops } from './readSvgLoops.ts';
import { shownBySheets } from './shownBySheets.ts';

const isText = (content: MadeFile['content']): content is string => typeof content === 'string';

const svgNames: LayerNames = { level: (level) => `disc-level-${level}`, pattern: () => 'disc' };
const dxfNames: LayerNames = {
  level: (level) => `print-level-${level}`,
  pattern: (kind) => ({ 'through-cut': 'cut', relief: 'engrave', copper: 'copper' })[kind] ?? 'print',
};

function bySolids(plan: DiscPlan, bodies: ReadonlyMap<string, Triangles>): ShownLevels | null {
  const form = formOf(plan.spec);
  const tops = [...bodies].map(([name, triangles]) => ({ name, top: topOf(triangles) }));
  const only = tops[0]?.top;
  if (!only) return null;
  if (form.kind === 'through-cut') return twoLevels(plan, (x, y) => only(x, y) === null);
  if (form.kind === 'relief') {
    const middle = (form.floorMm + plan.spec.thicknessMm) / 2;
    return twoLevels(plan, (x, y) => (only(x, y) ?? 0) > middle === (form.raised === 'light'));
  }
  const ground: Level = plan.spec.windowLevel === 0 ? 1 : 0;
  const hair = 1e-3;
  return (x, y) =>
    tops.flatMap(({ name, top }): Level[] => {
      const height = top(x, y);
      if (height === null || height < plan.spec.thicknessMm - hair) return [];
      return [name === 'disc-base' ? ground : (Number(name.at(-1)) as Level)];
    });
}

/**
 * What the files of a disc show, each read by itself; the bodies of an inlay are read together.
 *
 * @param plan - What they should show.
 * @param files - Files of the disc; others are passed over.
 * @returns One reading a file, or a set of files; `null` where a file shows no pattern at all.
 */
export function shownBy(plan: DiscPlan, files: readonly MadeFile[]): Map<string, ShownLevels | null> {
  const shown = new Map<string, ShownLevels | null>();
  const solids = new Map<string, Triangles>();
  for (const { path, content } of files) {
    const name = path.slice(path.lastIndexOf('/') + 1);
    if (name === 'disc.svg' && isText(content))
      shown.set(path, byLoops(plan, readSvgLoops(content), svgNames));
    if (name === 'disc.dxf' && isText(content))
      shown.set(path, byLoops(plan, readDxfLoops(content), dxfNames));
    if (isText(content)) continue;
    if (name === 'disc.pdf') shown.set(path, shownBySheets(plan, content));
    if (name === 'disc.3mf') shown.set(path, bySolids(plan, readThreeMfBodies(content)));
    if (/^disc.*[.]stl$/.test(name)) solids.set(name.replace(/[.]stl$/, ''), readStlTriangles(content));
  }
  if (solids.size > 0)
    shown.set([...solids.keys()].map((name) => `${name}.stl`).join(', '), bySolids(plan, solids));
  return shown;
}
