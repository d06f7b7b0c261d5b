import { describe, expect, it } from 'vitest';
import { svgPen } from './svgPen.ts';

const axis = { xMm: 0, yMm: 0 };
const at = (degrees: number, radius: number) => ({
  xMm: radius * Math.sin((degrees * Math.PI) / 180),
  yMm: radius * Math.cos((degrees * Math.PI) / 180),
});

function arcData(fromDeg: number, toDeg: number, clockwise: boolean): string {
  const { pen, pathData } = svgPen();
  pen.moveTo(at(fromDeg, 10));
  pen.arcTo(at(toDeg, 10), axis, clockwise);
  pen.close();
  return pathData();
}

describe('a drawing in SVG', () => {
  it('turns the sheet over: up on the sheet is a negative y', () => {
    const { pen, pathData } = svgPen();
    pen.moveTo({ xMm: 1, yMm: 2 });
    pen.lineTo({ xMm: 3, yMm: -4 });
    pen.close();
    expect(pathData()).toBe('M1 -2 L3 4 Z');
  });

  it('keeps an arc with the clock with the clock', () => {
    expect(arcData(0, 90, true)).toBe('M0 -10 A10 10 0 0 1 10 0 Z');
    expect(arcData(90, 0, false)).toBe('M10 0 A10 10 0 0 0 0 -10 Z');
  });

  it('draws an arc of 120 degrees in one piece', () => {
    expect(arcData(0, 120, true)).toBe('M0 -10 A10 10 0 0 1 8.66025 5 Z');
  });

  it('cuts a longer arc into equal pieces, whose ends hold it in place', () => {
    expect(arcData(0, 180, true)).toBe('M0 -10 A10 10 0 0 1 10 0 A10 10 0 0 1 0 10 Z');
    // 270 degrees the long way round: three quarters.
    expect(arcData(90, 0, true)).toBe('M10 0 A10 10 0 0 1 0 10 A10 10 0 0 1 -10 0 A10 10 0 0 1 0 -10 Z');
  });

  it('writes no minus before a zero, and no more than five decimals', () => {
    const { pen, pathData } = svgPen();
    pen.moveTo({ xMm: -1e-9, yMm: 1e-9 });
    pen.lineTo({ xMm: 1 / 3, yMm: 2 / 3 });
    expect(pathData()).toBe('M0 0 L0.33333 -0.66667');
  });
});
