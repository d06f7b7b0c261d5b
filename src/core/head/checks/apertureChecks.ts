import { runLengthsDeg } from '../../codes/index.ts';
import type { DiscPlan } from '../../disc/index.ts';
import type { Problem } from '../../error/index.ts';
import { degToRad, showMm, showNumber } from '../../units/index.ts';
import type { Findings } from './findings.ts';
import { edgeSpread, spreadAcross } from '../light/edgeSpread.ts';
import type { ChannelPlan } from '../headPlan.ts';
import type { Aperture, HeadSpec } from '../headSpec.ts';
import { ribFindings } from './ribChecks.ts';
import { spillFindings } from './spillChecks.ts';
import type { SwitchLights } from '../circuit/thresholds.ts';

/** Light lost beyond a track's own ring above which the lit level is not what was measured. Common practice, no source. */
const LOST_SHARE = 0.05;

/** Everything about the spot against marks, its own track and its neighbours that is wrong or tight. */
export function apertureFindings(
  disc: DiscPlan,
  spec: HeadSpec,
  channels: readonly ChannelPlan[],
  levels: SwitchLights,
): Findings {
  const tracks = [...new Set(channels.map((channel) => channel.track))].sort((a, b) => a - b);
  const found = tracks.flatMap((track) => [
    markFindings(disc, spec.aperture, track, levels),
    ringFindings(disc, spec, track),
    ribFindings(disc, spec, track, levels),
  ]);
  found.push(spillFindings(disc, spec, tracks, levels));
  return {
    problems: found.flatMap((finding) => finding.problems),
    warnings: found.flatMap((finding) => finding.warnings),
  };
}

const NOTHING: Findings = { problems: [], warnings: [] };

/** Size of the spot along the track: all of it, or between the 1/e² points of a beam. [mm] */
function spotMm(aperture: Aperture): number {
  switch (aperture.shape) {
    case 'slit':
      return aperture.widthMm;
    case 'round':
      return aperture.diameterMm;
    case 'gaussian':
      return 2 * aperture.radiusMm;
  }
}

/** Field that narrows the spot along the track. */
function spotField(aperture: Aperture): string {
  return {
    slit: 'head.aperture.widthMm',
    round: 'head.aperture.diameterMm',
    gaussian: 'head.aperture.radiusMm',
  }[aperture.shape];
}

/** A mark narrower than the spot is never seen fully; one far narrower is never seen at all. */
function markFindings(disc: DiscPlan, aperture: Aperture, track: number, levels: SwitchLights): Findings {
  const { midRadiusMm } = disc.tracks[track]!;
  const marks = disc.code.tracks[track]!;
  if (marks.startsDeg.length === 1) return NOTHING;
  const shortest = { window: Infinity, land: Infinity };
  for (const [run, length] of runLengthsDeg(marks).entries()) {
    const kind = marks.levels[run] === disc.spec.windowLevel ? 'window' : 'land';
    const growth = kind === 'window' ? disc.spec.process.windowGrowthMm : -disc.spec.process.windowGrowthMm;
    shortest[kind] = Math.min(shortest[kind], degToRad(length) * midRadiusMm + Math.min(0, growth));
  }
  const { transmitted } = edgeSpread(aperture);
  const coverOf = (mark: number): number => transmitted(-mark / 2) - transmitted(mark / 2);
  const unseen =
    coverOf(shortest.window) <= levels.risingLight || 1 - coverOf(shortest.land) >= levels.fallingLight;
  const mark = Math.min(shortest.window, shortest.land);
  const spot = spotMm(aperture);
  if (!unseen && spot <= mark) return NOTHING;
  const problem: Problem = {
    code: unseen ? 'head/mark-not-seen' : 'head/spot-wide',
    what: unseen
      ? `The spot is so wide that the shortest mark of track ${track} never switches its channel.`
      : `The spot is wider than the shortest mark of track ${track}, so the counts never reach lit or dark there.`,
    where: spotField(aperture),
    got: `a spot of ${showMm(spot)} on a mark of ${showMm(mark)}`,
    allowed: `a spot of ${showMm(mark)} at most; half of that reads well`,
    fix: `Make the spot ${showMm(mark / 2)} wide, or the disc larger.`,
  };
  return unseen ? { problems: [problem], warnings: [] } : { problems: [], warnings: [problem] };
}

/** Light that falls beside the track's own ring is lost, and with it contrast. */
function ringFindings(disc: DiscPlan, { aperture }: HeadSpec, track: number): Findings {
  const { innerRadiusMm, outerRadiusMm } = disc.tracks[track]!;
  const width = outerRadiusMm - innerRadiusMm;
  const lost = 2 * spreadAcross(aperture).transmitted(width / 2);
  if (lost <= LOST_SHARE) return NOTHING;
  const warning: Problem = {
    code: 'head/spot-long',
    what: `Part of the spot lies beside track ${track}, where it can never see a window.`,
    where: aperture.shape === 'slit' ? 'head.aperture.lengthMm' : spotField(aperture),
    got: `${showNumber(100 * lost, 1)} % of the spot outside a ring of ${showMm(width)}`,
    allowed: `${100 * LOST_SHARE} % at most`,
    fix: `Make the spot ${showMm(0.8 * width)} long across the track, or give each track more width.`,
  };
  return { problems: [], warnings: [warning] };
}
