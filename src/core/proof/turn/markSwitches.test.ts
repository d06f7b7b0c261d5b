import { describe, expect, it } from 'vitest';
import { apartDeg } from '../../../../test/support/denseTurn.ts';
import { handDisc } from '../../../../test/support/handDisc.ts';
import { handHead } from '../../../../test/support/handHead.ts';
import type { Level } from '../../codes/index.ts';
import { detectorDefaults, markShares, type Aperture } from '../../head/index.ts';
import { exactTurn } from './exactTurn.ts';
import { markSwitches } from './markSwitches.ts';
import { turnModel } from './turnModel.ts';

const COLOURS = detectorDefaults['colour-sensor'];

function modelOf(aperture: Aperture, positions = 27) {
  const disc = handDisc({ family: 'ternary-modular', positions, firstRadiusMm: 16, pitchMm: 6 });
  const head = handHead(disc, { spec: { detector: COLOURS, aperture } });
  return { head, model: turnModel(head) };
}

describe('a channel that tells three colours apart', () => {
  it.each<[string, Aperture]>([
    ['by themselves', { shape: 'slit', widthMm: 1.2, lengthMm: 3 }],
    ['two in one wide spot', { shape: 'gaussian', radiusMm: 2.2 }],
  ])('changes where a fine scan of its spot says, edges passing %s', (_, aperture) => {
    const { model } = modelOf(aperture);
    for (const sense of ['growing', 'falling'] as const) {
      const marks = model.channels[2]!.marks!;
      const reader = model.reader!;
      const { switches } = markSwitches(marks, reader, sense);
      const truth: { at: number; level: Level }[] = [];
      let level: Level | null = null;
      for (let step = 0; step <= 2 * 36_000; step++) {
        const angle = (sense === 'growing' ? 1 : -1) * step * 0.01;
        const now = reader.judge(markShares(marks, angle));
        if (now !== null && now !== level && step >= 36_000) truth.push({ at: angle, level: now });
        level = now ?? level;
      }
      expect(switches.length).toBe(truth.length);
      for (const { at, level: after } of truth) {
        const same = switches.filter((found) => (sense === 'growing' ? found.after : found.before) === after);
        expect(Math.min(...same.map(({ atDeg }) => apartDeg(atDeg, at)))).toBeLessThan(0.011);
      }
    }
  });

  it('reads every position of a ternary disc once a turn, each way', () => {
    const { head } = modelOf({ shape: 'round', diameterMm: 2 });
    const { growing, falling, errors } = exactTurn(head);
    for (const stretches of [growing, falling]) {
      expect(stretches.map(({ position }) => position).sort((a, b) => a! - b!)).toEqual(
        Array.from({ length: 27 }, (_, k) => k),
      );
    }
    expect(errors.illegalShare).toBe(0);
    expect(errors.misreadShare).toBe(0);
  });

  it('read as greys shows a wrong position at every jump over the middle one', () => {
    const disc = handDisc({ family: 'ternary-modular', positions: 27, firstRadiusMm: 16, pitchMm: 6 });
    const detector = { ...detectorDefaults['reflectance-pair'], middleMa: 0.27 };
    const head = handHead(disc, { spec: { detector, aperture: { shape: 'round', diameterMm: 2 } } });
    expect(head.warnings.map(({ code }) => code)).toContain('head/blend-misread');
    expect(head.warnings.find(({ code }) => code === 'head/blend-misread')!.got).toContain('9 edges');
    // Nine of its 27 steps go between the darkest and the lightest grey.
    const { growing } = exactTurn(head);
    expect(growing.length).toBe(27 + 9);
  });
});
