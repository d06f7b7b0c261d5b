import { greyLevels, runLengthsDeg } from '../../codes/index.ts';
import type { DiscPlan } from '../../disc/index.ts';
import type { Problem } from '../../error/index.ts';
import { degToRad, showMm, showNumber } from '../../units/index.ts';
import type { HeadSpec } from '../headSpec.ts';
import { edgeSpread } from '../light/edgeSpread.ts';
import type { MarkPlan } from '../marks/markPlan.ts';
import type { MarkReader } from '../marks/markReader.ts';
import type { Findings } from './findings.ts';

/** Scatter of one reading that must not change a colour, in standard deviations. Common practice, no source. */
const LEAST_SIGMA = 6;

/** Tracks of three marks. */
export function markedTracks({ code }: DiscPlan): number[] {
  return [...new Set(code.channels.map(({ track }) => track))].filter(
    (track) => code.tracks[track]!.levelCount > 2,
  );
}

/** Neither a photoresistor nor a phototransistor tells one colour from another. */
export function unseenMarks(disc: DiscPlan, plan: MarkPlan | null): Problem[] {
  const { code } = disc;
  if (plan !== null || markedTracks(disc).length === 0) return [];
  const coloured = code.channels.filter(({ track }) => code.tracks[track]!.levelCount > 2);
  return [
    {
      code: 'head/colours-unseen',
      what: 'The code has three colours, and this head only tells light from dark.',
      where: 'head.detector.kind',
      got: `${code.family} with ${coloured.length} channels of three levels`,
      allowed: 'colour-sensor, reflectance-pair with middleMa, or a code of windows and lands',
      fix: 'Set head.detector.kind to colour-sensor, or disc.code to reflected-gray.',
    },
  ];
}

/** Marks that look alike, are too narrow, or blend into a third; each leaves the head unable to read. */
export function markFindings(disc: DiscPlan, spec: HeadSpec, plan: MarkPlan, reader: MarkReader): Findings {
  const problems = [...likeness(plan), ...narrowMarks(disc, spec)];
  return { problems, warnings: problems.length > 0 ? [] : blends(disc, plan, reader) };
}

function likeness(plan: MarkPlan): Problem[] {
  if (plan.kind === 'colours') {
    if (plan.marginSigma >= LEAST_SIGMA) return [];
    return [
      {
        code: 'head/marks-alike',
        what: 'Two colours look so much alike that the scatter of a reading mixes them up.',
        where: 'head.detector.marksRgbCounts',
        got: `${showNumber(plan.marginSigma, 1)} standard deviations of a reading to spare`,
        allowed: `${LEAST_SIGMA} standard deviations or more`,
        fix: 'Choose colours farther apart, such as red, green and blue, or more light for higher counts.',
      },
    ];
  }
  const [low, high] = plan.thresholds;
  const [dark, middle, light] = plan.counts as [number, number, number];
  const inside = (a: number, b: number, { lowCounts, highCounts }: typeof low): boolean =>
    Math.min(a, b) < lowCounts && Math.max(a, b) > highCounts;
  if (inside(dark, middle, low) && inside(middle, light, high)) return [];
  return [
    {
      code: 'head/marks-alike',
      what: 'Two greys look so much alike that no threshold fits between them.',
      where: 'head.detector.middleMa',
      got: `counts of ${[dark, middle, light].map((counts) => showNumber(counts, 1)).join(', ')} over the three greys`,
      allowed: `more than ${showNumber(high.highCounts - high.lowCounts, 1)} counts between two of them`,
      fix: 'Choose a middle grey whose current lies halfway between those over black and white.',
    },
  ];
}

function narrowMarks(disc: DiscPlan, { aperture, penumbra = null }: HeadSpec): Problem[] {
  return markedTracks(disc).flatMap((track): Problem[] => {
    const radiusMm = disc.tracks[track]!.midRadiusMm;
    const { reachMm } = edgeSpread(aperture, { radiusMm, penumbra });
    const mark = degToRad(Math.min(...runLengthsDeg(disc.code.tracks[track]!))) * radiusMm;
    if (mark > 2 * reachMm) return [];
    return [
      {
        code: 'head/mark-not-seen',
        what: `The spot is so wide that a mark of track ${track} is never seen alone, and its colour is never read.`,
        where: 'head.aperture',
        got: `a spot of ${showMm(2 * reachMm)} on a mark of ${showMm(mark)}`,
        allowed: `a spot of less than ${showMm(mark)}`,
        fix: `Make the spot ${showMm(mark / 2)} wide, or the disc larger.`,
      },
    ];
  });
}

/** Edges at which the way from one mark to another passes through the third. */
function blends({ code }: DiscPlan, plan: MarkPlan, reader: MarkReader): Problem[] {
  const passing =
    plan.kind === 'greys'
      ? greyLevels(code).misread
      : code.tracks.reduce((sum, { levels, levelCount }) => {
          if (levelCount < 3) return sum;
          const thirds = levels.filter((to, i) => {
            const from = levels.at(i - 1)!;
            return (
              from !== to && reader.changes(from, to).some(({ level }) => level !== from && level !== to)
            );
          });
          return sum + thirds.length;
        }, 0);
  if (passing === 0) return [];
  return [
    {
      code: 'head/blend-misread',
      what: 'Between two marks the spot sees their blend, and here a blend of two looks like the third: a wrong position shows.',
      where: plan.kind === 'greys' ? 'disc.code' : 'head.detector.marksRgbCounts',
      got: `${passing} edges of ${code.family} pass through a third mark`,
      allowed: 'none',
      fix:
        plan.kind === 'greys'
          ? 'Set disc.code to ternary-reflected, which moves one grey level at a time.'
          : 'Choose three colours of which none is a blend of the other two, such as red, green and blue.',
    },
  ];
}
