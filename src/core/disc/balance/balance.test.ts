import { describe, expect, it } from 'vitest';
import { discKinds, jettyDisc, noNotch } from '../../../../test/support/discSpecs.ts';
import { runsRound } from '../../../../test/support/discMeasure.ts';
import { readSvg } from '../../../../test/support/svgReader.ts';
import { buildCode, codeTable } from '../../codes/index.ts';
import { discSvg } from '../../make/index.ts';
import type { DiscPlan } from '../discPlan.ts';
import type { DiscSpec } from '../discSpec.ts';
import { planDisc } from '../planDisc.ts';
import { balanceOf } from './balance.ts';

const planOf = (spec: DiscSpec, positions = 32) => planDisc(buildCode(spec.code, positions), spec);

/** A disc without any pattern. */
function plainDisc(spec: Partial<DiscSpec>): DiscPlan {
  const code = codeTable('plain', 1, { tracks: [], channels: [] });
  return { code, spec: { ...jettyDisc, notch: noNotch, ...spec }, tracks: [], ribs: [] };
}

describe('the balance of a disc', () => {
  it('of ⌀80 by 2 mm in PLA is 12.5 g and 9.97e-6 kg m², but for the smallest bore', () => {
    const { massG, inertiaKgM2, centreDeg, unbalanceGMm, counterweight } = balanceOf(
      plainDisc({ bore: { shape: 'round', diameterMm: 0.01 } }),
    );
    expect(massG).toBeCloseTo(12.5, 1);
    expect(inertiaKgM2).toBeCloseTo(9.97e-6, 8);
    expect([centreDeg, counterweight]).toEqual([null, null]);
    expect(unbalanceGMm).toBeLessThan(1e-9);
  });

  it('has the moments of a half ring in closed form', () => {
    // One window over half the turn, disc angles 180 to 360, from 14 to 37.6 mm: the disc is heavy at 90 degrees.
    const spec = { ...jettyDisc, bore: { shape: 'round', diameterMm: 5 }, notch: noNotch } as const;
    const balance = balanceOf(planOf(spec, 2));
    const gPerMm2 = 2 * 1240e-6;
    const [inner, outer] = [14, 37.6];
    expect(balance.massG).toBeCloseTo(gPerMm2 * Math.PI * (1600 - 6.25 - (outer ** 2 - inner ** 2) / 2), 9);
    expect(balance.unbalanceGMm).toBeCloseTo((gPerMm2 * 2 * (outer ** 3 - inner ** 3)) / 3, 9);
    expect(balance.centreDeg).toBeCloseTo(90, 9);
    const polar = (Math.PI / 2) * (40 ** 4 - 2.5 ** 4) - (Math.PI / 4) * (outer ** 4 - inner ** 4);
    expect(balance.inertiaKgM2).toBeCloseTo(gPerMm2 * polar * 1e-9, 15);
    // On the hub, half way between 2.5 and 14 mm, on the light side.
    expect(balance.counterweight!.radiusMm).toBeCloseTo(8.25, 9);
    expect(balance.counterweight!.angleDeg).toBeCloseTo(270, 9);
    expect(balance.counterweight!.massG * 8.25).toBeCloseTo(balance.unbalanceGMm, 9);
    // 1 N is the weight of 101.97 g: torque of that unbalance where the shaft leans by 1 degree.
    const lean = (balance.unbalanceGMm / 101.9716) * 0.0174524;
    expect(balance.leanTorqueNmm).toBeCloseTo(lean, 6);
  });

  it.each<[string, DiscSpec['bore'], number]>([
    ['D', { shape: 'd', diameterMm: 8, acrossFlatMm: 6.5 }, 1],
    ['hex', { shape: 'hex', diameterMm: 8 }, 0],
  ])('weighs a bore as small cells do: %s', (_, bore, sign) => {
    const spec = { ...jettyDisc, bore, notch: noNotch };
    const solid = balanceOf(plainDisc({ bore: { shape: 'round', diameterMm: 1e-6 } }));
    const bored = balanceOf(plainDisc({ bore }));
    const drawing = readSvg(discSvg(planOf(spec, 2)));
    const cell = 0.02;
    let [area, y, polar] = [0, 0, 0];
    for (let row = -5; row < 5; row += cell) {
      for (let column = -5; column < 5; column += cell) {
        const [px, py] = [column + cell / 2, row + cell / 2];
        if (drawing.isInside(px, -py)) continue;
        area += cell ** 2;
        y += py * cell ** 2;
        polar += (px ** 2 + py ** 2) * cell ** 2;
      }
    }
    const gPerMm2 = 2 * 1240e-6;
    expect((solid.massG - bored.massG) / gPerMm2 / area).toBeCloseTo(1, 2);
    expect((solid.inertiaKgM2 - bored.inertiaKgM2) / (gPerMm2 * 1e-9) / polar).toBeCloseTo(1, 2);
    expect(Math.sign(Math.round(-y))).toBe(sign);
    expect(bored.unbalanceGMm).toBeCloseTo(gPerMm2 * Math.abs(y), 3);
    // Material left at the flat, which faces disc angle 0.
    if (sign === 1) expect(bored.centreDeg).toBeCloseTo(0, 9);
    else expect(bored.centreDeg).toBeNull();
  });

  it.each(discKinds.filter(({ spec, positions }) => spec.process.kind !== 'film' && positions <= 32))(
    'is that of the drawing, ring by ring: $name',
    ({ spec, positions }) => {
      const plan = planOf(spec, positions);
      const drawing = readSvg(discSvg(plan));
      const looks = (x: number, y: number) => drawing.isInside(x, -y);
      const ring = 0.125;
      let [x, y, area] = [0, 0, 0];
      for (let radius = ring / 2; radius < spec.diameterMm / 2; radius += ring) {
        for (const { isMaterial, from, to } of runsRound(looks, radius)) {
          if (!isMaterial) continue;
          const [a, b] = [(from * Math.PI) / 180, (to * Math.PI) / 180];
          area += (b - a) * radius * ring;
          x += (Math.cos(a) - Math.cos(b)) * radius ** 2 * ring;
          y += (Math.sin(b) - Math.sin(a)) * radius ** 2 * ring;
        }
      }
      const { massG, unbalanceGMm } = balanceOf(plan);
      expect(
        Math.abs(
          (massG * area ** -1) / (spec.thicknessMm * (spec.process.kind === 'fdm' ? 1240 : 1190)) / 1e-6 - 1,
        ),
      ).toBeLessThan(0.01);
      expect(Math.abs(unbalanceGMm / massG - Math.hypot(x, y) / area)).toBeLessThan(0.05);
    },
  );
});
