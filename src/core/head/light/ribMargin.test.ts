import { describe, expect, it } from 'vitest';
import { handDisc } from '../../../../test/support/handDisc.ts';
import { BOARD, LINEAR_HEAD, QUIET_CIRCUIT, SLOW_RATE } from '../../../../test/support/handHead.ts';
import { jettyDisc, noNotch } from '../../../../test/support/discSpecs.ts';
import { buildCode } from '../../codes/index.ts';
import { planDisc, type DiscPlan } from '../../disc/index.ts';
import { planHead } from '../planHead.ts';
import type { Aperture } from '../headSpec.ts';
import { lightLevel } from './lightLevel.ts';
import { ribMargin } from './ribMargin.ts';
import { seenAsDrawn } from './seenTrack.ts';

const headWith = (aperture: Aperture) => ({
  spec: { ...LINEAR_HEAD, aperture },
  circuit: QUIET_CIRCUIT,
  board: BOARD,
});

/** The largest share that ribs take of any margin, read from both discs whole, all round the turn. */
function takenAllRound(disc: DiscPlan, ribs: DiscPlan['ribs'], head: ReturnType<typeof headWith>): number {
  const { risingLight } = planHead(disc, head.spec, head.circuit, head.board, SLOW_RATE).levels;
  let most = 0;
  for (const { track, angleDeg } of disc.code.channels) {
    const bare = seenAsDrawn(disc, track, head.spec);
    const ribbed = seenAsDrawn({ ...disc, ribs: [...disc.ribs, ...ribs] }, track, head.spec);
    for (let quarter = 0; quarter < 4 * disc.code.positions; quarter++) {
      const angle = (quarter * 90) / disc.code.positions + angleDeg;
      const margin = lightLevel(bare, angle) - risingLight;
      // Boundaries between positions are where light changes, ribs or not.
      if (quarter % 4 !== 0 && margin > 0) {
        most = Math.max(most, (lightLevel(bare, angle) - lightLevel(ribbed, angle)) / margin);
      }
    }
  }
  return most;
}

/** A disc of loose rings, held by ribs as they are chosen. */
function heldDisc(
  family: string,
  positions: number,
  windowLevel: 0 | 1,
  head: ReturnType<typeof headWith> | null,
) {
  const spec = { ...jettyDisc, webMm: 0, rimMm: 0, notch: noNotch, windowLevel };
  return planDisc(buildCode(family, positions), spec, head ? ribMargin(head) : undefined);
}

describe('what a rib costs', () => {
  it.each<[string, Aperture]>([
    ['a slit that ends in its own ring', { shape: 'slit', widthMm: 2, lengthMm: 4.5 }],
    ['a slit that reaches into the next ring', { shape: 'slit', widthMm: 1.5, lengthMm: 6.5 }],
    ['a round spot', { shape: 'round', diameterMm: 4.5 }],
    ['a beam', { shape: 'gaussian', radiusMm: 1.6 }],
  ])('is the largest share of a margin that its shadow takes under %s', (_, aperture) => {
    const disc = handDisc({ positions: 16, firstRadiusMm: 20, pitchMm: 6, webMm: 0.8 });
    const head = headWith(aperture);
    const cost = ribMargin(head)(disc);
    for (const { windows } of disc.tracks) {
      const { innerRadiusMm, outerRadiusMm, fromDeg, toDeg } = windows.at(-1)!;
      for (const width of [0.6, 1.3]) {
        for (const rib of [
          { innerRadiusMm, outerRadiusMm: innerRadiusMm + width, fromDeg, toDeg: fromDeg + 9 },
          // Written a whole turn before its window.
          { innerRadiusMm: outerRadiusMm - width, outerRadiusMm, fromDeg: toDeg - 366, toDeg: toDeg - 360 },
        ]) {
          expect(cost(rib)).toBeCloseTo(takenAllRound(disc, [rib], head), 9);
        }
      }
    }
    expect(
      cost({ ...disc.tracks[0]!.windows[0]!, outerRadiusMm: disc.tracks[0]!.innerRadiusMm + 2 }),
    ).toBeGreaterThan(0);
  });

  it('is nothing where no spot sees it', () => {
    const disc = handDisc({ positions: 16, firstRadiusMm: 20, pitchMm: 6, webMm: 0.8 });
    const { innerRadiusMm, fromDeg, toDeg } = disc.tracks[1]!.windows[0]!;
    const rib = { innerRadiusMm, outerRadiusMm: innerRadiusMm + 1, fromDeg, toDeg };
    expect(ribMargin(headWith({ shape: 'slit', widthMm: 1, lengthMm: 3 }))(disc)(rib)).toBe(0);
  });

  it.each<[string, number, 0 | 1, Aperture]>([
    ['long-run-gray', 64, 0, { shape: 'slit', widthMm: 1.5, lengthMm: 4 }],
    ['long-run-gray', 32, 1, { shape: 'round', diameterMm: 5 }],
  ])('chooses better ribs than the shortest: %s of %i positions', (family, positions, level, aperture) => {
    const head = headWith(aperture);
    const [shortest, cheapest] = [
      heldDisc(family, positions, level, null),
      heldDisc(family, positions, level, head),
    ];
    const taken = (plan: DiscPlan): number => takenAllRound({ ...plan, ribs: [] }, plan.ribs, head);
    expect(cheapest.ribs.length).toBeGreaterThan(0);
    expect(taken(cheapest)).toBeLessThan(0.85 * taken(shortest));
  });
});
