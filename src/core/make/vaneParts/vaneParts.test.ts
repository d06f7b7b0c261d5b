import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exampleInstrument } from '../../../../test/support/plannedHead.ts';
import { problemsOf } from '../../../../test/support/problemsOf.ts';
import { processDefaults } from '../../disc/index.ts';
import { cornerOf, cross, dot, meshVolumeMm3, type Triple } from '../solids/meshFacts.ts';
import { printSetting } from '../solids/print.ts';
import { withShapes } from '../solids/shapeKit.ts';
import type { Mesh } from '../solids/solid.ts';
import { coneShellMm3, cupPlan, cupProblems } from './cupPlan.ts';
import { cupShape } from './cupShapes.ts';
import { PLASTIC_KG_PER_M3, STEEL_KG_PER_M3, VANE_ARM } from './materials.ts';
import { vanePlan, type VaneWant } from './vanePlan.ts';
import { finShape, noseShape } from './vaneShapes.ts';

const { parts, disc } = exampleInstrument('jetty');
const want: VaneWant = { ...parts.vane!, bedMm: 200, otherInertiaKgM2: 0 };

/** A printer that makes what is drawn, and tubes that need no play. */
const exact = {
  ...printSetting(disc, parts),
  process: processDefaults.fdm,
  corrections: { scale: 1, edgeLossMm: 0, boreAllowanceMm: 0, footGrowthMm: 0 },
};

/** Middle of a solid, by tetrahedra about the origin. [mm] */
function middleOf(mesh: Mesh): Triple {
  let [volume, x, y, z] = [0, 0, 0, 0];
  for (let at = 0; at < mesh.triangles.length; at += 3) {
    const [a, b, c] = [0, 1, 2].map((i) => cornerOf(mesh, mesh.triangles[at + i]!)) as [
      Triple,
      Triple,
      Triple,
    ];
    const part = dot(a, cross(b, c)) / 6;
    volume += part;
    x += (part * (a[0] + b[0] + c[0])) / 4;
    y += (part * (a[1] + b[1] + c[1])) / 4;
    z += (part * (a[2] + b[2] + c[2])) / 4;
  }
  return [x / volume, y / volume, z / volume];
}

describe('a vane', () => {
  const plan = vanePlan(want);

  it('balances about its axis, by the meshes that are printed and the steel and tube that are bought', async () => {
    const { fin, nose } = await withShapes((kit) => ({
      fin: finShape(kit, plan, exact).mesh(),
      nose: noseShape(kit, plan, exact).mesh(),
    }));
    const plastic = (mesh: Mesh): number => meshVolumeMm3(mesh) * 1e-9 * PLASTIC_KG_PER_M3;
    // The fin's mesh begins at y = 0 and runs to minus y; in the vane its front lies a quarter depth before the arm's end.
    const finAt = plan.armMm - plan.fin.depthMm / 4 - middleOf(fin)[1];
    const tailEnd = plan.armMm + plan.fin.depthMm * (0.8 - 0.25);
    const tubeAt = tailEnd - plan.tubeMm / 2;
    const { diameterMm, lengthMm } = plan.weight;
    // The nose stands on its socket, 14 mm deep: the tube ends there, the steel begins 2 mm beyond.
    const tubeFront = tailEnd - plan.tubeMm;
    const noseAt = tubeFront + 14 - middleOf(nose)[2];
    const steelKg = (Math.PI / 4) * diameterMm ** 2 * lengthMm * 1e-9 * STEEL_KG_PER_M3;
    const steelAt = tubeFront - 2 - lengthMm / 2;
    const tubeKg = (VANE_ARM.kgPerM * plan.tubeMm) / 1000;
    const tail = plastic(fin) * finAt + tubeKg * tubeAt;
    const front = plastic(nose) * noseAt + steelKg * steelAt;
    // Sockets are drawn with 0.15 mm of play, which takes away a little plastic.
    expect(Math.abs(tail + front) / tail).toBeLessThan(0.01);
    expect(steelAt).toBeCloseTo(-plan.noseMm, 9);
  });

  it('is calm enough, starts in the wanted wind, and fits the bed', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 0.33, noNaN: true }),
        fc.double({ min: 0.02, max: 0.3, noNaN: true }),
        (damping, frictionNmm) => {
          const found = vanePlan({ ...want, damping, frictionNmm });
          expect(found.response.damping).toBeGreaterThanOrEqual(damping);
          expect(found.fin.spanMm).toBeLessThanOrEqual(want.bedMm);
          const area = found.fin.spanMm * found.fin.depthMm * 1e-6;
          const hold = (2 * Math.PI * 2) / (2 + Math.sqrt(8));
          const moment = 0.5 * 1.225 * 0.25 * area * hold * ((5 * Math.PI) / 180) * (found.armMm / 1000);
          expect(moment * 1000).toBeGreaterThanOrEqual(frictionNmm * (1 - 1e-9));
        },
      ),
      { seed: 20261125, numRuns: 30 },
    );
  });

  it('needs a longer arm or a wider fin where a heavy disc turns with it', () => {
    const heavy = vanePlan({ ...want, otherInertiaKgM2: 4e-4 });
    expect(heavy.armMm * heavy.fin.spanMm).toBeGreaterThan(plan.armMm * plan.fin.spanMm);
    expect(heavy.response.damping).toBeGreaterThanOrEqual(want.damping);
  });

  it('is refused when it cannot be as calm as asked, with the most that is possible', () => {
    const [problem] = problemsOf(() => vanePlan({ ...want, damping: 0.8 }));
    expect(problem).toMatchObject({ code: 'make/vane-underdamped', where: 'parts.vane.damping' });
    const possible = Number(/parts.vane.damping to ([\d.]+)/.exec(problem!.fix)![1]);
    expect(vanePlan({ ...want, damping: possible }).response.damping).toBeGreaterThanOrEqual(possible);
  });

  it('is refused when nothing on the bed overcomes the friction, with the most that can be overcome', () => {
    const [problem] = problemsOf(() => vanePlan({ ...want, frictionNmm: 20, damping: 0.05 }));
    const most = Number(/turn with ([\d.]+) N mm/.exec(problem!.fix)![1]);
    expect(problemsOf(() => vanePlan({ ...want, frictionNmm: most, damping: 0.05 }))).toEqual([]);
  });
});

describe('cups', () => {
  const plan = cupPlan(parts.cups, disc.bore);

  it('have the volume of a cone shell with a boss', async () => {
    const mesh = await withShapes((kit) => cupShape(kit, plan, exact).mesh());
    const socket = (Math.PI / 4) * 3.15 ** 2 * 10;
    const cone = meshVolumeMm3(mesh) + socket - 10 * 8 * 8;
    // The boss reaches into the shell and out of its slope, by no more than its width times its height.
    expect(cone).toBeGreaterThan(coneShellMm3(plan));
    expect(cone - coneShellMm3(plan)).toBeLessThan((8 * 8 * 8) / 2);
  });

  it('have walls as thick as asked, square to the slope', () => {
    // Two cones of the same slope, their radii apart by √2 walls, lie one wall apart.
    expect((plan.outerRadiusMm - plan.mouthMm / 2) / Math.SQRT2).toBeCloseTo(parts.cups.wallMm, 12);
  });

  it('are refused where they leave no rod to the hub, with the least radius that does', () => {
    const small = { ...parts.cups, radiusMm: 30 };
    const [problem] = cupProblems(cupPlan(small, disc.bore));
    expect(problem).toMatchObject({ code: 'make/cups-too-close' });
    const radiusMm = Number(/radiusMm to (\d+)/.exec(problem!.fix)![1]);
    expect(cupProblems(cupPlan({ ...small, radiusMm }, disc.bore))).toEqual([]);
    expect(cupProblems(cupPlan({ ...small, radiusMm: radiusMm - 1 }, disc.bore))).toHaveLength(1);
  });

  it('pull as a mass on a circle does', () => {
    const speed = 40 / 2.7;
    const mass = (plan.cupMassG + (Math.PI / 4) * 9e-6 * 1600 * plan.rodMm) / 1000;
    expect(plan.pullN).toBeCloseTo((mass * speed ** 2) / 0.07, 6);
    expect(plan.turnsPerM * 40).toBeCloseTo(speed / (2 * Math.PI * 0.07), 10);
  });
});
