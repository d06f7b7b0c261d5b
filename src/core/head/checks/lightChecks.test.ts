import { describe, expect, it } from 'vitest';
import { BOARD, LINEAR_HEAD } from '../../../../test/support/handHead.ts';
import { lightFindings } from './lightChecks.ts';

function warned(currentMa: number, channels: number): string[] {
  const light = { kind: 'led', currentMa, wavelengthNm: 950 } as const;
  return lightFindings({ ...LINEAR_HEAD, light }, channels, BOARD).warnings.map(
    ({ code, fix }) => `${code} ${fix}`,
  );
}

describe('the current of the lights', () => {
  it('is told where one diode does not bear it, or the supply does not bear all', () => {
    expect(warned(100, 5).map((text) => text.split(' ')[0])).toEqual([
      'head/diode-current',
      'head/supply-current',
    ]);
    expect(warned(100, 4).map((text) => text.split(' ')[0])).toEqual(['head/diode-current']);
    expect(warned(10, 5)).toEqual([]);
  });

  it.each([
    [100, 5],
    [25, 20],
    [30, 32],
  ])('of %f mA through each of %i has a fix that is borne', (currentMa, channels) => {
    const named = Number(/currentMa to ([\d.]+),/.exec(warned(currentMa, channels).at(-1)!)![1]);
    expect(warned(named, channels)).toEqual([]);
  });
});
