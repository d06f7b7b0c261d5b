import { describe, expect, it } from 'vitest';
import { buildCode } from '../../src/core/codes/index.ts';
import { discAreaMm2, planDisc, processDefaults, type DiscSpec } from '../../src/core/disc/index.ts';
import { discSvg } from '../../src/core/make/index.ts';
import { misreadings } from '../support/discReadings.ts';
import { discKinds, jettyDisc } from '../support/discSpecs.ts';
import { readSvg } from '../support/svgReader.ts';

function svgOf(spec: DiscSpec, positions: number): string {
  return discSvg(planDisc(buildCode(spec.code, positions), spec));
}

describe('a drawn disc, read back from its file by separate code', () => {
  it.each(discKinds)('decodes to the intended position all round: $name', ({ spec, positions }) => {
    const drawing = readSvg(svgOf(spec, positions));
    const { wrong, read } = misreadings(spec, positions, 0.001, (x, y) => drawing.isInside(x, -y));
    expect(wrong).toEqual([]);
    expect(read).toBeGreaterThan(3000);
  });

  it.each(discKinds)('has the area of the closed form: $name', ({ spec, positions }) => {
    const plan = planDisc(buildCode(spec.code, positions), spec);
    const area = discAreaMm2(plan);
    expect(Math.abs(readSvg(discSvg(plan)).signedAreaMm2 / area - 1)).toBeLessThan(1e-5);
  });

  it('is drawn in true millimetres', () => {
    const { widthMm, heightMm, viewBox } = readSvg(svgOf(jettyDisc, 32));
    expect([widthMm, heightMm]).toEqual([84, 84]);
    expect(viewBox).toEqual([-42, -42, 84, 84]);
  });

  it('shows its index notch at disc angle 0 and its flat on the same side', () => {
    const drawing = readSvg(svgOf(jettyDisc, 32));
    expect(drawing.isInside(0, -39)).toBe(false);
    expect(drawing.isInside(0, -38.7)).toBe(true);
    expect(drawing.isInside(1.1, -39.9)).toBe(true);
    expect(drawing.isInside(0, 39.9)).toBe(true);
    expect(drawing.isInside(0, -2.1)).toBe(true);
    expect(drawing.isInside(0, 2.1)).toBe(false);
  });

  it('says in words what it shows', () => {
    const { title, desc, fill } = readSvg(svgOf(jettyDisc, 32));
    expect(title).toBe('Coded disc: 32 positions, 80 mm');
    expect(desc).toContain('reflected-gray code of 32 positions on 5 tracks');
    expect(fill).toBe('none');
  });

  it('fills what stops the light on film, and marks where to trim a film without a rim', () => {
    const film = { ...jettyDisc, process: processDefaults.film, rimMm: 0, notch: { widthMm: 0, depthMm: 0 } };
    const svg = svgOf(film, 32);
    expect(readSvg(svg).fill).toBe('#000');
    expect(svg).toMatch(/<path id="cut-path" d="M0 -40.05 A40.05 40.05 /);
  });

  it('is the same to the last byte when drawn again', () => {
    expect(svgOf(jettyDisc, 32)).toBe(svgOf(structuredClone(jettyDisc), 32));
  });
});
