import type { FittedRelease } from '../../app/api.ts';
import { showDegrees, showNumber } from '../../core/units/index.ts';
import { vaneRanges } from '../../core/wind/index.ts';
import { part } from '../textParts.ts';
import { leftOutLines } from './leftOutLines.ts';

const passText = (reaches: boolean): string => (reaches ? 'yes' : 'NO');

function releaseLines({ release, resolutionDeg }: FittedRelease): string[] {
  if (!release) return [];
  const { motion, turningPointsDeg, restDeg } = release;
  const { damping, dampingElsewhere, overshootAtMost, dampedWavelengthBelowM, delayDistanceAtMostM } =
    vaneRanges;
  const { reaches } = motion;
  const points = turningPointsDeg.map((deg) => showDegrees(Number(deg.toFixed(1)))).join(', ');
  return part('Vane let go', [
    `came to rest at  ${showDegrees(Number(restDeg.toFixed(1)))}; readings tell ${showDegrees(Number(resolutionDeg.toFixed(2)))} apart`,
    `turning points   ${points} off that`,
    `damping ratio    ${showNumber(motion.damping, 2)}: ${dampingElsewhere.low} to ${dampingElsewhere.high} ${passText(reaches.dampingElsewhere)}; the stricter ${damping.low} to ${damping.high} ${passText(reaches.damping)}`,
    `overshoot        ${showNumber(motion.overshoot, 2)}: the stricter at most ${overshootAtMost} ${passText(reaches.overshoot)}`,
    `damped wave      ${showNumber(motion.dampedWavelengthM, 1)} m: below ${dampedWavelengthBelowM} m ${passText(reaches.dampedWavelength)}`,
    `delay distance   ${showNumber(motion.delayDistanceM, 1)} m: at most ${delayDistanceAtMostM} m ${passText(reaches.delayDistance)}`,
    ...motion.cautions.map(({ what, fix }) => `- ${what} ${fix}`),
  ]);
}

function spinLines({ spinDown }: FittedRelease): string[] {
  if (!spinDown) return [];
  const { spinDownS, fromHz, bearingHzPerS, airPerS } = spinDown;
  return part('Cups let go', [
    `spin-down        ${showNumber(spinDownS, 1)} s from ${fromHz} pulses a second to standing`,
    `slowed by        the bearing ${showNumber(bearingHzPerS, 3)} Hz a second, the air ${showNumber(airPerS, 3)} of the speed a second`,
    '- Write the time down and spin them again next year: half of it means that the bearing wears.',
  ]);
}

/** What `fit release` prints. */
export function releaseText(release: FittedRelease): string {
  const verdict = release.isWithin
    ? 'YES, the vane moves within the ranges below.'
    : 'NO, the vane falls short of the ranges below.';
  return [
    `${release.name}: ${release.release ? verdict : 'the cups let go'}`,
    ...releaseLines(release),
    ...spinLines(release),
    ...part('Lines left out while reading', leftOutLines(release.leftOut)),
  ].join('\n');
}

/** The same as data. */
export function releaseDocument(fitted: FittedRelease): Record<string, unknown> {
  const { name, release, resolutionDeg, spinDown, isWithin, leftOut } = fitted;
  return { command: 'fit release', ok: isWithin, name, release, resolutionDeg, spinDown, leftOut };
}
