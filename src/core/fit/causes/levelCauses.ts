import { showNumber } from '../../units/index.ts';
import type { FittedChannel } from '../fit.ts';
import type { ColumnLevels } from '../levels/channelLevels.ts';
import type { Cause } from './cause.ts';

/** A channel that cannot be read spoils every second reading. [deg] */
const BLIND_DEG = 180;

const counts = (value: number): string => showNumber(value, 0);

/** Name of a column in a sentence: its channel where that is known, else as recorded. */
export function nameOf(column: ColumnLevels, channels: readonly FittedChannel[]): string {
  const channel = channels.find((one) => one.column === column.column);
  if (!channel) return `input "${column.name}"`;
  return `channel ${channel.channel}${channel.pin ? ` (on ${channel.pin})` : ''}`;
}

function span({ lowPlateau, highPlateau }: ColumnLevels): string {
  return `${counts(lowPlateau)} to ${counts(highPlateau)} counts`;
}

/** What the levels of the recorded columns say. */
export function levelCauses(columns: readonly ColumnLevels[], channels: readonly FittedChannel[]): Cause[] {
  const swings = columns.map(({ lowPlateau, highPlateau }) => highPlateau - lowPlateau);
  const widest = Math.max(...swings);
  return columns.flatMap((column): Cause[] => {
    const name = nameOf(column, channels);
    const channel = channels.find((one) => one.column === column.column);
    const common = { picture: 'signals', channels: channel ? [channel.channel] : [] } as const;
    const found = levelCause(column, name, widest, channel);
    return [
      ...(found ? [{ ...common, ...found }] : []),
      ...driftCause(column, name).map((one) => ({ ...common, ...one })),
    ];
  });
}

type Bare = Omit<Cause, 'picture' | 'channels'>;

function levelCause(
  column: ColumnLevels,
  name: string,
  widest: number,
  channel: FittedChannel | undefined,
): Bare | null {
  const at = `It reads ${counts(column.highPlateau)} counts all the time, within ${showNumber(column.noiseCounts, 1)} counts.`;
  switch (column.verdict) {
    case 'dead':
      return {
        kind: 'dead',
        standing: 'mend',
        costDeg: BLIND_DEG,
        title: `${sentence(name)} never sees light`,
        evidence: at,
        instruction: `Look for light at the sensor of ${name} with its window open, then for a broken wire; record again.`,
      };
    case 'stuck':
      return {
        kind: 'stuck',
        standing: 'mend',
        costDeg: BLIND_DEG,
        title: `${sentence(name)} reads light all the time`,
        evidence: at,
        instruction: `Cover the sensor of ${name}: if the counts stay, its wire is shorted or its resistor missing; record again.`,
      };
    case 'tied':
      return {
        kind: 'tied',
        standing: 'mend',
        costDeg: BLIND_DEG,
        title: `${sentence(name)} always changes together with column ${column.tiedTo}`,
        evidence: `Of all samples, at least 97 in 100 agree with those of column ${column.tiedTo}. No code has two such channels.`,
        instruction: `Part the two wires: look for a solder bridge, or for an input without its resistor that follows its neighbour.`,
      };
    case 'saturated':
      return {
        kind: 'saturated',
        standing: 'mend',
        costDeg: BLIND_DEG,
        title: `Daylight drowns ${name}`,
        evidence: `In some files it changes between ${span(column)}, in others no threshold parts light from dark.`,
        instruction:
          'Close the housing against daylight, or use a smaller resistor, and record in the sun again.',
      };
    case 'weak':
      return weakCause(column, name, widest, channel);
    default:
      return null;
  }
}

function weakCause(
  column: ColumnLevels,
  name: string,
  widest: number,
  channel: FittedChannel | undefined,
): Bare {
  const swing = column.highPlateau - column.lowPlateau;
  const middle = counts((column.lowCounts + column.highCounts) / 2);
  const isDim = swing < 0.7 * widest;
  const part = channel ? `channel ${channel.channel}'s light` : `the light of ${name}`;
  return {
    kind: 'weak',
    standing: column.marginSigma >= 6 ? 'corrected' : 'mend',
    costDeg: column.marginSigma >= 6 ? 1 : 30,
    title: isDim ? `${sentence(name)} has a dim light` : `${sentence(name)} has little to spare`,
    evidence:
      `It changes between ${span(column)}, ${showNumber((100 * swing) / widest, 0)} % of the best channel's swing; ` +
      `${counts(column.marginCounts)} counts, ${showNumber(column.marginSigma, 0)} sigma, are left beyond the thresholds.`,
    instruction: isDim
      ? `${sentence(part)} is dim: replace it or use threshold ${middle}.`
      : `Use thresholds ${column.lowCounts} and ${column.highCounts} for ${name}, and shorten its wire.`,
  };
}

function driftCause(column: ColumnLevels, name: string): Bare[] {
  const swing = column.highPlateau - column.lowPlateau;
  const drift = column.driftCounts.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);
  if (swing === 0 || Math.abs(drift) < Math.max(0.05 * swing, 6 * column.noiseCounts)) return [];
  return [
    {
      kind: 'drift',
      standing: 'know',
      costDeg: 0.2,
      title: `${sentence(name)} drifts`,
      evidence: `From the first third of the recording to the last its level went by ${counts(drift)} counts.`,
      instruction: 'Let lamps and sensors warm up for ten minutes in the closed housing, then record again.',
    },
  ];
}

/** The same with a capital at its beginning. */
export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
