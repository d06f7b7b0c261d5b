import { describe, expect, it } from 'vitest';
import { discKinds, jettyDisc } from '../../../../test/support/discSpecs.ts';
import { buildCode } from '../../codes/index.ts';
import { materialGrid, planDisc, roundSheet } from '../../disc/index.ts';
import { faceMesh, type FaceMesh } from './faceMesh.ts';

function meshOf({ spec, positions }: Pick<(typeof discKinds)[number], 'spec' | 'positions'>) {
  const plan = planDisc(buildCode(spec.code, positions), spec);
  return { plan, mesh: faceMesh(materialGrid(plan), { bore: spec.bore, sheet: roundSheet }) };
}

/** Sides that only one triangle has, from and to. */
function openSides({ triangles }: FaceMesh): Set<string> {
  const sides = new Set<string>();
  for (let at = 0; at < triangles.length; at++) {
    const next = at % 3 === 2 ? at - 2 : at + 1;
    const [from, to] = [triangles[at]!, triangles[next]!];
    if (!sides.delete(`${to} ${from}`)) sides.add(`${from} ${to}`);
  }
  return sides;
}

const solidKinds = discKinds.filter(({ spec }) => spec.process.kind !== 'film');

describe('the face of a disc in triangles', () => {
  it.each(solidKinds)('is open along its border and nowhere else: $name', (kind) => {
    const { mesh } = meshOf(kind);
    const border = new Set<string>();
    for (let at = 0; at < mesh.border.length; at += 2)
      border.add(`${mesh.border[at]} ${mesh.border[at + 1]}`);
    expect(openSides(mesh)).toEqual(border);
  });

  it('follows every arc to 0.01 mm', () => {
    const { mesh } = meshOf({ spec: jettyDisc, positions: 32 });
    let farthest = 0;
    for (let at = 0; at < mesh.border.length; at += 2) {
      const [from, to] = [mesh.border[at]!, mesh.border[at + 1]!];
      const [x, y] = [(mesh.xMm[from]! + mesh.xMm[to]!) / 2, (mesh.yMm[from]! + mesh.yMm[to]!) / 2];
      const radius = Math.hypot(mesh.xMm[from]!, mesh.yMm[from]!);
      const isArc = Math.abs(Math.hypot(mesh.xMm[to]!, mesh.yMm[to]!) - radius) < 1e-5;
      const isFlat = radius < 3 && Math.abs(mesh.yMm[from]! - mesh.yMm[to]!) < 1e-5; // of the D bore
      if (isArc && !isFlat) farthest = Math.max(farthest, radius - Math.hypot(x, y));
    }
    expect(farthest).toBeGreaterThan(0.001);
    expect(farthest).toBeLessThan(0.01);
  });

  it('needs at most a fifth more triangles than its outline does', () => {
    const { plan, mesh } = meshOf({
      spec: { ...jettyDisc, diameterMm: 400, hubDiameterMm: 200 },
      positions: 1024,
    });
    // A polygon of v corners with h holes falls into v + 2h - 2 triangles.
    const holes = 1 + plan.tracks.reduce((sum, { windows }) => sum + windows.length, 0);
    const fewest = mesh.border.length / 2 + 2 * holes - 2;
    expect(mesh.triangles.length / 3 / fewest).toBeLessThan(1.2);
    expect(mesh.triangles.length / 3 / fewest).toBeGreaterThanOrEqual(1);
  });
});
