import { describe, expect, it } from 'vitest';
import { jettyDisc, noNotch } from '../../../../test/support/discSpecs.ts';
import { buildCode } from '../../codes/index.ts';
import type { DiscSpec } from '../../disc/index.ts';
import { faultFile } from '../faultFile.ts';

const drawn = (changes: Partial<DiscSpec>, positions = 32) => {
  const spec = { ...jettyDisc, ...changes };
  return faultFile(buildCode(spec.code, positions), spec)?.content as string | undefined;
};
const ringsOf = (svg: string) =>
  [...svg.matchAll(/<circle cx="([-\d.]+)" cy="([-\d.]+)"/g)].map(
    ([, x, y]) => [Number(x), Number(y)] as const,
  );

describe('the drawing of a faulty disc', () => {
  it('is not made of a sound disc', () => {
    expect(drawn({})).toBeUndefined();
    expect(drawn({ diameterMm: NaN })).toBeUndefined();
  });

  it('rings the weak bridge: beside the widest window, on the web outside the innermost track', () => {
    const svg = drawn({ thicknessMm: 0.4 })!;
    const [[x, y]] = ringsOf(svg) as [readonly [number, number]];
    // Gray 32: tracks 0 and 1 are both open over a quarter turn, from 180 to 270 degrees: middle to the lower left.
    expect(Math.atan2(x, -y) * (180 / Math.PI)).toBeCloseTo(-135, 1);
    expect(Math.hypot(x, y)).toBeCloseTo(14 + 3.76 + 0.6, 3);
    expect(svg).toContain('would break at the touch of a finger');
    // Outer edge, bore and sixteen windows.
    expect(svg.match(/Z/g)).toHaveLength(18);
  });

  it('rings every loose land', () => {
    const svg = drawn({ webMm: 0, rimMm: 0, notch: noNotch, diameterMm: 300 })!;
    expect(ringsOf(svg).length).toBeGreaterThan(3);
    expect(svg).toContain('would fall out');
  });

  it('says in words what has no place to be drawn', () => {
    const svg = drawn({ hubDiameterMm: 79 })!;
    expect(svg).toContain('The tracks do not fit between hub and rim.');
  });
});
