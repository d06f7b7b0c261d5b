import type { HeadPlan } from '../../head/index.ts';
import { radToDeg, showDegrees, showMm, showNumber } from '../../units/index.ts';
import type { FittedChannel, FittedDisc } from '../fit.ts';
import type { Cause } from './cause.ts';

/** A figure is told when it stands out of its own error by so much. [sigma] */
const CLEAR = 2;
/** Below this nothing is worth a line. [deg] */
const LEAST_DEG = 0.05;

/** Figures of a report: two decimals are more than a maker can use. */
const mm = (value: number): string => showMm(Number(value.toFixed(2)));
const deg = (value: number): string => showDegrees(Number(value.toFixed(value < 0.1 ? 2 : 1)));

/** What stands between the disc as drawn and the disc as made. */
export function discCauses(disc: FittedDisc, channels: readonly FittedChannel[], head: HeadPlan): Cause[] {
  return [
    ...boreCause(disc),
    ...tiltCause(disc),
    ...playCause(disc),
    ...channels.flatMap((channel) => placeCause(channel, head)),
    ...growthCause(channels, head),
    ...scatterCause(disc, head),
    ...wordCauses(disc),
  ];
}

function boreCause({ bore }: FittedDisc): Cause[] {
  const { offMm, boreTowardsPosition, outermostDeg, innermostDeg, patternTowardsSigmaDeg } = bore;
  if (offMm.value < CLEAR * offMm.sigma || innermostDeg < LEAST_DEG) return [];
  return [
    {
      kind: 'bore',
      standing: 'corrected',
      costDeg: innermostDeg,
      title: `The bore is ${mm(offMm.value)} off the middle of the pattern`,
      evidence:
        `Edges of inner and outer tracks run early and late once a turn: ${mm(offMm.value)} ± ${mm(offMm.sigma)}, the bore off towards ` +
        `position ${boreTowardsPosition} (± ${showNumber(patternTowardsSigmaDeg, 0)} degrees).`,
      instruction:
        `Bore is ${mm(offMm.value)} off towards position ${boreTowardsPosition}: ${deg(outermostDeg)} once per turn on the outermost track, ` +
        `${deg(innermostDeg)} on the innermost, already corrected in the table.`,
      picture: 'widths',
      channels: [],
    },
  ];
}

function tiltCause({ twiceDeg }: FittedDisc): Cause[] {
  if (twiceDeg.value < 3 * twiceDeg.sigma || twiceDeg.value < LEAST_DEG) return [];
  return [
    {
      kind: 'tilt',
      standing: 'corrected',
      costDeg: twiceDeg.value,
      title: 'The disc runs out twice a turn, as a tilted or oval one does',
      evidence: `${deg(twiceDeg.value)} ± ${deg(twiceDeg.sigma)} twice a turn.`,
      instruction:
        'Already corrected in the table; look along the edge of the turning disc and square it on its shaft.',
      picture: 'widths',
      channels: [],
    },
  ];
}

function playCause({ playDeg }: FittedDisc): Cause[] {
  if (!playDeg || playDeg.value < 3 * playDeg.sigma || playDeg.value < LEAST_DEG) return [];
  return [
    {
      kind: 'play',
      standing: 'mend',
      costDeg: playDeg.value,
      title: `The vane turns ${deg(playDeg.value)} before the disc follows`,
      evidence: `At your marks the disc stands ${deg(playDeg.value)} ± ${deg(playDeg.sigma)} apart, by which side they were come to from.`,
      instruction: 'Tighten the clamp of the disc and the coupling, then record again.',
      picture: 'signals',
      channels: [],
    },
  ];
}

function placeCause({ channel, alongMm, pin }: FittedChannel, head: HeadPlan): Cause[] {
  const usual = 2 * Math.max(head.spec.tangentialSdMm, 0.05);
  if (!alongMm || Math.abs(alongMm.value) < Math.max(usual, 3 * alongMm.sigma)) return [];
  const costDeg = radToDeg(Math.abs(alongMm.value)) / head.channels[channel]!.radiusMm;
  return [
    {
      kind: 'channel-off-place',
      standing: 'corrected',
      costDeg,
      title: `Channel ${channel} sits ${mm(Math.abs(alongMm.value))} off its place along the track`,
      evidence: `All its edges come ${deg(costDeg)} ${alongMm.value > 0 ? 'early' : 'late'} as the disc angle grows, ± ${mm(alongMm.sigma)}.`,
      instruction: `Already corrected in the table; to mend it, move the sensor of ${pin ?? `channel ${channel}`} ${alongMm.value > 0 ? 'counter-clockwise' : 'clockwise'} by ${mm(Math.abs(alongMm.value))}.`,
      picture: 'widths',
      channels: [channel],
    },
  ];
}

function growthCause(channels: readonly FittedChannel[], head: HeadPlan): Cause[] {
  const known = channels.flatMap(({ growthMm }) => (growthMm ? [growthMm] : []));
  if (known.length === 0) return [];
  const weight = known.reduce((sum, { sigma }) => sum + sigma ** -2, 0);
  const mean = known.reduce((sum, { value, sigma }) => sum + value * sigma ** -2, 0) / weight;
  const sigma = 1 / Math.sqrt(weight);
  if (Math.abs(mean) < Math.max(3 * sigma, 0.05)) return [];
  const radius = Math.max(...head.channels.map(({ radiusMm }) => radiusMm));
  const drawn = head.disc.spec.process.windowGrowthMm;
  return [
    {
      kind: 'window-growth',
      standing: 'corrected',
      costDeg: radToDeg(Math.abs(mean) / 2) / radius,
      title: `Windows are ${mm(Math.abs(mean))} ${mean > 0 ? 'wider' : 'narrower'} than drawn`,
      evidence: `Over all channels ${mm(mean)} ± ${mm(sigma)} beyond the ${mm(drawn)} of the file; a threshold off half light looks the same.`,
      instruction: `Already corrected in the table; for the next disc set disc.process.windowGrowthMm to ${showNumber(drawn + mean, 2)}.`,
      picture: 'widths',
      channels: [],
    },
  ];
}

function scatterCause({ edgeSdMm }: FittedDisc, head: HeadPlan): Cause[] {
  const drawn = head.disc.spec.process.edgeSdMm;
  if (edgeSdMm < 1.6 * drawn) return [];
  const radius = Math.min(...head.channels.map(({ radiusMm }) => radiusMm));
  return [
    {
      kind: 'edge-scatter',
      standing: 'corrected',
      costDeg: radToDeg(edgeSdMm) / radius,
      title: 'Edges are rougher than the process says',
      evidence: `Single edges stand ${mm(edgeSdMm)} off their places (one standard deviation), ${mm(drawn)} in the file.`,
      instruction: `Already corrected in the table as far as each edge was seen; set disc.process.edgeSdMm to ${showNumber(edgeSdMm, 2)}.`,
      picture: 'widths',
      channels: [],
    },
  ];
}

function wordCauses({ missing, neverEnding, positions }: FittedDisc): Cause[] {
  const step = 360 / positions.length;
  const causes: Cause[] = [];
  if (missing.length > 0) {
    causes.push({
      kind: 'missing-word',
      standing: 'mend',
      costDeg: step,
      title:
        missing.length === 1
          ? `Position ${missing[0]} never shows`
          : `${missing.length} positions never show`,
      evidence: `Never seen: ${listed(missing)}.`,
      instruction:
        'Turn slowly past the place and record again; if it stays missing, look there for a closed window or a scratch.',
      picture: 'words',
      channels: [],
    });
  }
  if (neverEnding.length > 0) {
    causes.push({
      kind: 'never-ending-word',
      standing: 'mend',
      costDeg: step,
      title:
        neverEnding.length === 1
          ? `Position ${neverEnding[0]} goes on into its neighbour`
          : `${neverEnding.length} positions go on into their neighbours`,
      evidence: `Wider than 1.75 steps: ${listed(neverEnding)}.`,
      instruction: 'Look on the disc between these positions for an edge that is missing or has moved.',
      picture: 'widths',
      channels: [],
    });
  }
  return causes;
}

/** Some numbers of a list, and how many more there are. */
function listed(numbers: readonly number[]): string {
  const shown = numbers.slice(0, 8).join(', ');
  return numbers.length > 8 ? `${shown} and ${numbers.length - 8} more` : shown;
}
