import { describe, expect, it } from 'vitest';
import { buildCode } from '../../src/core/codes/index.ts';
import { discAreaMm2, planDisc, type DiscSpec } from '../../src/core/disc/index.ts';
import { discDxf } from '../../src/core/make/index.ts';
import { misreadings } from '../support/discReadings.ts';
import { discKinds, jettyDisc } from '../support/discSpecs.ts';
import { readDxf } from '../support/dxfReader.ts';
import { ezdxfReport, MILLIMETRES } from '../support/ezdxf.ts';

const planOf = (spec: DiscSpec, positions: number) => planDisc(buildCode(spec.code, positions), spec);
const patternLayer = (spec: DiscSpec) => (spec.process.kind === 'film' ? 'print' : 'cut');

describe('a disc drawn for a cutter, read back from its file by separate code', () => {
  it.each(discKinds.filter(({ positions }) => positions <= 64))(
    'decodes to the intended position all round: $name',
    ({ spec, positions }) => {
      const drawing = readDxf(discDxf(planOf(spec, positions)));
      const looks = (x: number, y: number) => drawing.isInside(patternLayer(spec), x, y);
      const { wrong, read } = misreadings(spec, positions, 0.001, looks);
      expect(wrong).toEqual([]);
      expect(read).toBeGreaterThan(3000);
    },
  );

  it('is opened by ezdxf without an error, in millimetres, with true arcs and the area of the closed form', () => {
    const through = discKinds.filter(({ spec }) => spec.process.kind !== 'film');
    const plans = through.map(({ spec, positions }) => planOf(spec, positions));
    const report = ezdxfReport(plans.map(discDxf));
    for (const [index, { errors, units, arcs, area }] of report.entries()) {
      expect([errors, units]).toEqual([0, MILLIMETRES]);
      expect(arcs).toBeGreaterThan(2);
      expect(Math.abs(area / discAreaMm2(plans[index]!) - 1)).toBeLessThan(1e-6);
    }
    expect(report.length).toBeGreaterThan(8);
  });

  it('keeps what is marked apart from what is cut', () => {
    const { layers, polylines } = readDxf(discDxf(planOf(jettyDisc, 32)));
    expect(layers).toEqual(['mark', 'cut']);
    // From the bore of 5 to the hub of 28, a millimetre clear at both ends, straight up.
    expect(polylines[0]).toEqual({
      layer: 'mark',
      isClosed: false,
      corners: [
        { x: 0, y: 3.5, bulge: 0 },
        { x: 0, y: 13, bulge: 0 },
      ],
    });
  });

  it('is the same to the last byte when drawn again', () => {
    expect(discDxf(planOf(jettyDisc, 32))).toBe(discDxf(planOf(structuredClone(jettyDisc), 32)));
  });
});

describe('ezdxf', () => {
  it('does see a drawing that is not whole', () => {
    const drawing = discDxf(planOf(jettyDisc, 32));
    expect(() => ezdxfReport([drawing.slice(0, drawing.length / 2)])).toThrow();
  });
});
