import { describe, expect, it } from 'vitest';
import { handDisc } from '../../../../test/support/handDisc.ts';
import { LINEAR_HEAD } from '../../../../test/support/handHead.ts';
import type { Aperture } from '../headSpec.ts';
import { spillFindings } from './spillChecks.ts';

const TRACKS = [0, 1, 2, 3, 4];
const LEVELS = { risingLight: 0.55, fallingLight: 0.45 };

function found(aperture: Aperture, radialSdMm = 0.2) {
  const { problems, warnings } = spillFindings(
    handDisc(),
    { ...LINEAR_HEAD, aperture, radialSdMm },
    TRACKS,
    LEVELS,
  );
  return [...problems, ...warnings];
}

describe('a spot that reaches over its neighbours', () => {
  it.each<[Aperture, string]>([
    [{ shape: 'slit', widthMm: 1, lengthMm: 20 }, 'lengthMm'],
    [{ shape: 'slit', widthMm: 1, lengthMm: 9 }, 'lengthMm'],
    [{ shape: 'round', diameterMm: 16 }, 'diameterMm'],
    [{ shape: 'gaussian', radiusMm: 8 }, 'radiusMm'],
  ])('is told once, with a size that fits: %o', (aperture, field) => {
    const [problem, ...more] = found(aperture);
    expect(more).toEqual([]);
    const size = Number(new RegExp(`${field} to ([\\d.]+) `).exec(problem!.fix)![1]);
    expect(found({ ...aperture, [field]: size })).toEqual([]);
    expect(found({ ...aperture, [field]: size + 0.05 })).toHaveLength(1);
  });

  // The ring beside lies 3 mm from the middle: a slit of length L has (L/2 - 2.6)/L of itself there when 0.4 mm off.
  it('may be as long as the closed form of a slit allows', () => {
    const { fix } = found({ shape: 'slit', widthMm: 1, lengthMm: 9 })[0]!;
    const size = Number(/to ([\d.]+) /.exec(fix)![1]);
    const share = (size / 2 - 2.6) / size + Math.max(0, (size / 2 - 3.4) / size);
    expect(share).toBeLessThan(0.225);
    expect(((size + 0.05) / 2 - 2.6 + Math.max(0, (size + 0.05) / 2 - 3.4)) / (size + 0.05)).toBeGreaterThan(
      0.225,
    );
  });

  it('is no matter of its size where channels stand off by more than the gap', () => {
    const { fix } = found({ shape: 'slit', widthMm: 1, lengthMm: 2 }, 3)[0]!;
    expect(fix).toContain('no spot is short enough');
  });
});
