import { describe, expect, it } from 'vitest';
import { discKinds, jettyDisc, noNotch } from '../../../../test/support/discSpecs.ts';
import { buildCode, codeTable, trackFromCells } from '../../codes/index.ts';
import type { Pen, Point } from '../pen.ts';
import { planDisc } from '../planDisc.ts';
import { polarGrid } from '../pieces/polarGrid.ts';
import { discAreaMm2 } from './discArea.ts';
import { drawDisc } from './drawDisc.ts';
import { outlinesOf } from './outlines.ts';
import { sheetPoint } from './sheetPoint.ts';

/** A pen that keeps what it is told, and the area it goes round, by the line integral of (x dy - y dx) / 2. */
function notingPen(): { pen: Pen; calls: string[]; area(): number } {
  const calls: string[] = [];
  let area = 0;
  let start: Point = { xMm: 0, yMm: 0 };
  let at = start;
  const straight = (to: Point) => {
    area += (at.xMm * to.yMm - to.xMm * at.yMm) / 2;
    at = to;
  };
  const pen: Pen = {
    moveTo: (to) => {
      calls.push('move');
      start = at = to;
    },
    lineTo: (to) => {
      calls.push('line');
      straight(to);
    },
    arcTo: (to, centre, clockwise) => {
      calls.push(clockwise ? 'arc with the clock' : 'arc against the clock');
      const bearing = (point: Point) => Math.atan2(point.yMm - centre.yMm, point.xMm - centre.xMm);
      let sweep = bearing(to) - bearing(at);
      if (clockwise && sweep > 0) sweep -= 2 * Math.PI;
      if (!clockwise && sweep < 0) sweep += 2 * Math.PI;
      area += (sweep * (to.xMm ** 2 + to.yMm ** 2)) / 2; // all our arcs are about the axis
      at = to;
    },
    close: () => {
      calls.push('close');
      straight(start);
    },
  };
  return { pen, calls, area: () => area };
}

function drawn(spec: typeof jettyDisc, positions: number) {
  const plan = planDisc(buildCode(spec.code, positions), spec);
  const noting = notingPen();
  drawDisc(plan, noting.pen);
  return { ...noting, plan };
}

describe('the sheet', () => {
  it.each([
    [0, 0, 10],
    [90, 10, 0],
    [180, 0, -10],
    [270, -10, 0],
  ])('shows disc angle %i at (%i, %i)', (angle, x, y) => {
    expect(sheetPoint(angle, 10).xMm).toBeCloseTo(x, 12);
    expect(sheetPoint(angle, 10).yMm).toBeCloseTo(y, 12);
  });
});

describe('a drawn disc', () => {
  it.each(discKinds)('goes round exactly the area of the closed form: $name', ({ spec, positions }) => {
    const { plan, area } = drawn(spec, positions);
    expect(Math.abs(area() / discAreaMm2(plan) - 1)).toBeLessThan(1e-9);
  });

  it('draws outer edge, bore and windows with as few strokes as they have sides', () => {
    const { calls } = drawn({ ...jettyDisc, notch: noNotch, bore: { shape: 'round', diameterMm: 5 } }, 2);
    const circle = (way: string) => ['move', `arc ${way} the clock`, `arc ${way} the clock`, 'close'];
    // One window of half a turn: it begins with an arc, and closing draws the last of its four sides.
    const window = ['move', 'arc with the clock', 'line', 'arc against the clock', 'close'];
    expect([...calls].sort()).toEqual([...circle('against'), ...circle('with'), ...window].sort());
    expect(calls.slice(0, 4)).toEqual(circle('against'));
    expect(calls.slice(4, 8)).toEqual(circle('with'));
  });

  it('draws windows that touch as one outline with the corners of both', () => {
    // The upper window reaches beyond the lower on both sides: 8 corners, 4 arcs and 4 lines.
    const ring = { innerRadiusMm: 1, outerRadiusMm: 4 };
    const lower = { innerRadiusMm: 1.5, outerRadiusMm: 2, fromDeg: 10, toDeg: 20 };
    const upper = { innerRadiusMm: 2, outerRadiusMm: 3, fromDeg: 5, toDeg: 30 };
    const outlines = outlinesOf(polarGrid(ring, [lower, upper], []));
    expect(outlines.map((outline) => outline.length)).toEqual([1, 8]);
  });

  it('draws windows with a common straight edge without a joint in it', () => {
    const ring = { innerRadiusMm: 1, outerRadiusMm: 4 };
    const lower = { innerRadiusMm: 1.5, outerRadiusMm: 2, fromDeg: 10, toDeg: 20 };
    const upper = { innerRadiusMm: 2, outerRadiusMm: 3, fromDeg: 10, toDeg: 30 };
    expect(outlinesOf(polarGrid(ring, [lower, upper], [])).map((outline) => outline.length)).toEqual([1, 6]);
  });

  it('draws a window of a whole turn as two circles', () => {
    const ring = { innerRadiusMm: 1, outerRadiusMm: 4 };
    const whole = { innerRadiusMm: 2, outerRadiusMm: 3, fromDeg: 10, toDeg: 370 };
    const outlines = outlinesOf(polarGrid(ring, [whole], []));
    expect(outlines.map(([side]) => side)).toMatchObject([
      { radiusMm: 4, turnDeg: -360 },
      { radiusMm: 2, turnDeg: -360 },
      { radiusMm: 3, turnDeg: 360 },
    ]);
  });

  it('keeps lands that meet at a corner apart', () => {
    const ring = { innerRadiusMm: 1, outerRadiusMm: 4 };
    const lower = { innerRadiusMm: 2, outerRadiusMm: 3, fromDeg: 0, toDeg: 90 };
    const upper = { innerRadiusMm: 3, outerRadiusMm: 3.5, fromDeg: 90, toDeg: 180 };
    // One hole round both windows: 8 sides, passing the corner twice.
    expect(outlinesOf(polarGrid(ring, [lower, upper], [])).map((outline) => outline.length)).toEqual([1, 8]);
  });

  describe('of a shift-register track', () => {
    // Eight cells in which every three neighbours differ from every other three.
    const cells = [0, 0, 0, 1, 0, 1, 1, 1] as const;
    const windowsOf = (pattern: readonly (0 | 1)[]) => {
      const channels = [0, 45, 90].map((angleDeg) => ({ track: 0, angleDeg }));
      const code = codeTable('by hand', 8, { tracks: [trackFromCells(pattern)], channels });
      return planDisc(code, jettyDisc).tracks[0]!.windows.map(({ fromDeg, toDeg }) => [
        fromDeg % 360,
        toDeg % 360,
      ]);
    };
    const ascending = (windows: number[][]) => windows.sort((a, b) => a[0]! - b[0]!);

    it('turns with its code: cells a quarter turn later are drawn a quarter turn later', () => {
      const turned = windowsOf([...cells.slice(6), ...cells.slice(0, 6)]);
      const expected = windowsOf(cells).map((window) => window.map((angle) => (angle + 90) % 360));
      expect(ascending(turned)).toEqual(ascending(expected));
    });

    it('mirrors with its code', () => {
      const mirrored = windowsOf([...cells].reverse());
      const expected = windowsOf(cells).map(([from, to]) => [(360 - to!) % 360, (360 - from!) % 360]);
      expect(ascending(mirrored)).toEqual(ascending(expected));
    });
  });
});
