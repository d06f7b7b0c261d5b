import type { Need } from '../../instrument/index.ts';
import type { Proof } from '../../proof/index.ts';
import { barPicture, histogramPicture, turnErrorPicture, type Markup } from '../../report/index.ts';
import { showDegrees } from '../../units/index.ts';

/** Items of a budget that are drawn: smaller ones would be bars of no length. [deg] */
const LEAST_DRAWN_DEG = 0.005;

/** The error budget as bars: fixed items filled, scattered ones at two standard deviations in outline. */
export function budgetPicture({ budget }: Pick<Proof, 'budget'>): Markup {
  const bars = budget.items
    .filter(({ maxDeg }) => maxDeg >= LEAST_DRAWN_DEG)
    .map(({ title, maxDeg, kind }) => ({
      ...{ title, value: maxDeg, isFilled: kind === 'fixed' },
      text: showDegrees(Number(maxDeg.toFixed(2))),
    }));
  return barPicture('What puts a reading out, in degrees: filled bars are the same on every build', bars);
}

/** Largest error of each virtual build, with what is accepted. */
export function buildsPicture(
  { builds }: Pick<Proof, 'builds'>,
  { accuracyDeg }: Pick<Need, 'accuracyDeg'>,
): Markup {
  const { histogram, maxErrorDeg } = builds;
  return histogramPicture({
    title: `Largest error of ${builds.builds} virtual builds`,
    axisTitle: 'largest error of a build',
    unit: '°',
    classWidth: histogram.classDeg,
    counts: histogram.counts,
    marks: [
      { at: accuracyDeg, text: `accepted ${showDegrees(accuracyDeg)}` },
      { at: maxErrorDeg.p95, text: `95 % within ${showDegrees(maxErrorDeg.p95)}` },
    ],
  });
}

/** Error over one turn clockwise of the design as drawn. */
export function turnPicture(
  { exactTurn }: Pick<Proof, 'exactTurn'>,
  { accuracyDeg, positions }: Pick<Need, 'accuracyDeg' | 'positions'>,
): Markup {
  return turnErrorPicture({ stretches: exactTurn.growing, positions, accuracyDeg });
}
