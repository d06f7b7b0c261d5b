import { describe, expect, it } from 'vitest';
import { apartDeg, denseCounts, denseTurn, type DenseSwitch } from '../../../../test/support/denseTurn.ts';
import { randomBuild } from '../../../../test/support/randomDesigns.ts';
import { degToRad, seededRandom } from '../../units/index.ts';
import { findEvents, roomForEvents } from './turnEvents.ts';
import { roomForErrors } from './turnErrors.ts';
import type { Sense } from './softMarks.ts';
import type { Conditions } from './conditions.ts';
import { turnModel, type TurnModel } from './turnModel.ts';
import { walkTurn } from './walkTurn.ts';

/** Designs looked at, and how fine the scan is that they are held against. [-], [deg] */
const DESIGNS = 500;
const SCAN_DEG = 0.1;

/** Changes of each channel that the closed forms find, in order of angle. */
function switchesOf(model: TurnModel, conditions: Conditions, sense: Sense): DenseSwitch[] {
  const events = roomForEvents(model);
  findEvents(model, conditions, sense, events);
  return Array.from(events.order.subarray(0, events.count), (event) => {
    const gain = events.keyGain[event]!;
    const channel = Math.log2(Math.abs(gain));
    return {
      channel,
      angleDeg: events.angleDeg[event]! % 360,
      lit: gain * model.channels[channel]!.keyStep > 0,
    };
  });
}

const byPlace = (a: DenseSwitch, b: DenseSwitch): number => a.channel - b.channel || a.angleDeg - b.angleDeg;

/** Largest distance of paired switches, whichever of them comes first in the circle; infinite when they do not pair. */
function worstApart(found: readonly DenseSwitch[], truth: readonly DenseSwitch[]): number {
  if (found.length !== truth.length) return Infinity;
  const left = [...truth];
  let worst = 0;
  for (const { channel, angleDeg, lit } of found) {
    const same = left.filter((other) => other.channel === channel && other.lit === lit);
    const nearest = same.sort((a, b) => apartDeg(a.angleDeg, angleDeg) - apartDeg(b.angleDeg, angleDeg))[0];
    if (!nearest) return Infinity;
    worst = Math.max(worst, apartDeg(nearest.angleDeg, angleDeg));
    left.splice(left.indexOf(nearest), 1);
  }
  return worst;
}

describe('where a build switches', () => {
  const random = seededRandom(20260131);
  const designs = Array.from({ length: DESIGNS }, () => {
    const design = randomBuild(random);
    return { ...design, counts: denseCounts(design.head, design.build, SCAN_DEG) };
  });

  it.each(['growing', 'falling'] as const)(
    'is where a dense scan of its light finds it, disc angle %s',
    (sense) => {
      for (const { head, counts, conditionsFor, name } of designs) {
        const model = turnModel(head);
        const found = switchesOf(model, conditionsFor(model), sense).sort(byPlace);
        const truth = [...denseTurn(head, counts, sense).switches].sort(byPlace);
        expect(worstApart(found, truth), name).toBeLessThan(0.01);
      }
    },
  );

  it('is looked for at edges by themselves and at edges that share the spot', () => {
    let [lone, beside] = [0, 0];
    for (const { head } of designs) {
      for (const { seen, wholeMarks } of turnModel(head).channels) {
        const marks = seen.edgesDeg.map(
          (edge, i) => degToRad((seen.edgesDeg[i + 1] ?? seen.edgesDeg[0]! + 360) - edge) * seen.radiusMm,
        );
        if (wholeMarks && Math.min(...marks) > 2.5 * seen.spread.reachMm) lone += 1;
        else beside += 1;
      }
    }
    expect(lone).toBeGreaterThan(100);
    expect(beside).toBeGreaterThan(50);
  });

  it('adds up to the errors that the scanned words have', () => {
    for (const { head, counts, conditionsFor, name } of designs) {
      const model = turnModel(head);
      const events = roomForEvents(model);
      const errors = roomForErrors(model.centresDeg.length);
      findEvents(model, conditionsFor(model), 'growing', events);
      walkTurn(model, events, 'growing', errors);
      const words = denseTurn(head, counts, 'growing').words;
      const truth = { square: 0, shown: 0, misread: 0, illegal: 0 };
      for (const [i, word] of words.entries()) {
        const position = head.disc.code.positionOf(word);
        if (position === null) {
          truth.illegal += SCAN_DEG;
          continue;
        }
        const centre = (position + 0.5) * model.stepDeg;
        const error = apartDeg(centre, i * SCAN_DEG);
        truth.square += error ** 2 * SCAN_DEG;
        truth.shown += SCAN_DEG;
        if (error > model.stepDeg) truth.misread += SCAN_DEG;
      }
      // Each switch may fall either side of one scanned angle.
      const slack = 2 * SCAN_DEG * (events.count + 2);
      expect(Math.abs(errors.misreadDeg - truth.misread), name).toBeLessThan(slack);
      expect(Math.abs(errors.illegalDeg - truth.illegal), name).toBeLessThan(slack);
      if (truth.shown === 0) continue;
      const rms = Math.sqrt(errors.squareSum / errors.shownDeg);
      expect(Math.abs(rms - Math.sqrt(truth.square / truth.shown)), name).toBeLessThan(0.04 * (1 + rms));
    }
  });
});
