import type { DiscPlan } from '../../disc/index.ts';
import type { Problem } from '../../error/index.ts';
import { degToRad, showMm, showNumber } from '../../units/index.ts';
import type { Findings } from './findings.ts';
import { edgeSpread } from '../light/edgeSpread.ts';
import type { HeadSpec } from '../headSpec.ts';
import { seenRibs } from '../light/seenRibs.ts';
import type { SwitchLights } from '../circuit/thresholds.ts';

/** Light a rib may take from a window before the maker should know. Common practice, no source. [-] */
const RIB_SHARE = 0.05;

/** Ribs that stand in a track's spot: one that stops most of the light is a land the code does not have. */
export function ribFindings(disc: DiscPlan, spec: HeadSpec, track: number, levels: SwitchLights): Findings {
  const { midRadiusMm, innerRadiusMm, outerRadiusMm } = disc.tracks[track]!;
  const { transmitted } = edgeSpread(spec.aperture);
  const taken = seenRibs(disc, track, spec.aperture).map(({ fromDeg, toDeg, share }) => {
    const half = (degToRad(toDeg - fromDeg) * midRadiusMm) / 2;
    return share * (transmitted(-half) - transmitted(half));
  });
  const most = Math.max(0, ...taken);
  if (most <= RIB_SHARE) return { problems: [], warnings: [] };
  const hides = 1 - most <= levels.risingLight;
  const clearMm = (outerRadiusMm - innerRadiusMm) / 2;
  const problem: Problem = {
    code: hides ? 'head/rib-hides-window' : 'head/rib-in-view',
    what: hides
      ? `A rib stops so much light on track ${track} that its window reads as land there.`
      : `A rib stops part of the light on track ${track}, so the counts never reach lit there.`,
    where: spec.aperture.shape === 'slit' ? 'head.aperture.lengthMm' : 'head.aperture',
    got: `${showNumber(100 * most, 1)} % of the spot behind a rib`,
    allowed: `less than ${showNumber(100 * (1 - levels.risingLight), 1)} %; ${100 * RIB_SHARE} % or less reads as if it were not there`,
    fix: `Make the spot no longer across the track than ${showMm(clearMm)}, the middle that ribs leave clear, or set disc.webMm so that no rib is needed.`,
  };
  return hides ? { problems: [problem], warnings: [] } : { problems: [], warnings: [problem] };
}
