import { describe, expect, it } from 'vitest';
import { barPicture, histogramPicture, ticksBetween, turnErrorPicture } from '../index.ts';

/** Numbers of an attribute of every element of a kind, in order. */
function numbersOf(svg: string, element: string, attribute: string): number[] {
  return [...svg.matchAll(new RegExp(`<${element} [^>]*?\\b${attribute}="([-\\d.]+)"`, 'g'))].map(
    ([, text]) => Number(text),
  );
}

describe('ticks', () => {
  it('stand at round numbers within the axis', () => {
    expect(ticksBetween(0, 10, 6)).toEqual([0, 2, 4, 6, 8, 10]);
    expect(ticksBetween(-7.3, 7.3, 7)).toEqual([-5, 0, 5]);
    expect(ticksBetween(0, 0.03, 4)).toEqual([0, 0.01, 0.02, 0.03]);
  });
});

describe('bars', () => {
  const { html } = barPicture('budget', [
    { title: 'bore', value: 2, text: '2°', isFilled: true },
    { title: 'edge <b>', value: 1, text: '1°', isFilled: false },
  ]);
  it('are as long as their values', () => {
    const [, first, second] = numbersOf(html, 'rect', 'width');
    expect(second! / first!).toBeCloseTo(0.5, 3);
  });
  it('are told apart without colour, and their words are harmless', () => {
    expect(html.match(/stroke-dasharray="3 2"/g)).toHaveLength(1);
    expect(html).not.toContain('<b>');
  });
});

describe('a histogram', () => {
  const { html } = histogramPicture({
    title: 'builds',
    axisTitle: 'largest error',
    unit: '°',
    classWidth: 0.5,
    counts: [0, 4, 8, 2],
    marks: [{ at: 1.9, text: 'accepted' }],
  });
  it('has a bar for every class, as high as its count', () => {
    const heights = numbersOf(html, 'rect', 'height').slice(2);
    expect(heights.map((height) => height / heights[2]!)).toEqual([0, 0.5, 1, 0.25]);
  });
  it('marks what is accepted in its place', () => {
    const [left, width] = [numbersOf(html, 'rect', 'x')[1]!, numbersOf(html, 'rect', 'width')[1]!];
    expect(html).toContain(`x1="${Number((left + (1.9 / 2) * width).toFixed(4))}"`);
  });
});

describe('the error over a turn', () => {
  const step = 45;
  const perfect = Array.from({ length: 8 }, (_, position) => ({
    fromDeg: position * step,
    toDeg: (position + 1) * step,
    position,
  }));

  it('is a saw-tooth of half a step for a disc without errors', () => {
    const { html } = turnErrorPicture({ stretches: perfect, positions: 8, accuracyDeg: 30 });
    expect(html).toContain('at most 22.5°');
    expect(html.match(/<polyline/g)).toHaveLength(8);
  });

  it('goes on over the end of the turn, and shades what shows no position', () => {
    const stretches = [
      { fromDeg: 0, toDeg: 350, position: null },
      { fromDeg: 350, toDeg: 370, position: 7 },
    ];
    const { html } = turnErrorPicture({
      stretches: [stretches[0]!, stretches[1]!],
      positions: 8,
      accuracyDeg: 30,
    });
    expect(html.match(/<polyline/g)).toHaveLength(2);
    // From 350 degrees on position 7 is shown, whose middle is 337.5; at 10 degrees it is 32.5 out.
    expect(html).toContain('at most 32.5°');
  });
});
