import type { AsBuilt } from '../../instrument/index.ts';
import { showDegrees, showNumber, turnBetween } from '../../units/index.ts';

/** One thing that differs between two tables of one build. */
export interface AsBuiltChange {
  /** Channel, position or whole. */
  readonly where: string;
  readonly before: string;
  readonly now: string;
  /** True where the change is beyond what two recordings of one build differ by anyhow. */
  readonly matters: boolean;
}

/** A level that moves by this share of the swing is worth a look: lamps age by such steps. [-]; own choice */
const LEVEL_SHARE = 0.1;
/** An edge that moves by this share of a step. [-]; own choice */
const STEP_SHARE = 0.1;

/** What has changed from one table to the next, channel by channel and then the turn. */
export function asBuiltChanges(before: AsBuilt, now: AsBuilt): AsBuiltChange[] {
  return [...channelChanges(before, now), ...senseChange(before, now), ...positionChanges(before, now)];
}

function channelChanges(before: AsBuilt, now: AsBuilt): AsBuiltChange[] {
  return now.channels.flatMap((channel, c): AsBuiltChange[] => {
    const old = before.channels[c];
    const where = `channel ${c}`;
    if (!old) return [{ where, before: 'not there', now: `on ${channel.pin}`, matters: true }];
    const changes: AsBuiltChange[] = [];
    if (old.pin !== channel.pin)
      changes.push({ where, before: `on ${old.pin}`, now: `on ${channel.pin}`, matters: true });
    const swing = Math.abs(old.litCounts - old.darkCounts);
    for (const [name, was, is] of [
      ['lit', old.litCounts, channel.litCounts],
      ['dark', old.darkCounts, channel.darkCounts],
    ] as const) {
      const moved = Math.abs(is - was);
      if (moved < 0.02 * swing) continue;
      const text = (counts: number): string => `${name} ${showNumber(counts, 0)} counts`;
      changes.push({ where, before: text(was), now: text(is), matters: moved > LEVEL_SHARE * swing });
    }
    return changes;
  });
}

function senseChange(before: AsBuilt, now: AsBuilt): AsBuiltChange[] {
  if (before.sense === now.sense) return [];
  return [{ where: 'sense of turning', before: before.sense, now: now.sense, matters: true }];
}

function positionChanges(before: AsBuilt, now: AsBuilt): AsBuiltChange[] {
  const old = new Map(before.positions.map((position) => [position.word, position]));
  const changes: AsBuiltChange[] = [];
  const moved: number[] = [];
  for (const { word, centreDeg } of now.positions) {
    const was = old.get(word);
    if (was) moved.push(turnBetween(was.centreDeg, centreDeg));
    else
      changes.push({
        where: `word ${word}`,
        before: 'never seen',
        now: `at ${showDegrees(centreDeg)}`,
        matters: true,
      });
    old.delete(word);
  }
  for (const [word, { centreDeg }] of old) {
    changes.push({
      where: `word ${word}`,
      before: `at ${showDegrees(centreDeg)}`,
      now: 'never seen',
      matters: true,
    });
  }
  const rms = Math.sqrt(moved.reduce((sum, deg) => sum + deg * deg, 0) / Math.max(1, moved.length));
  const step = 360 / Math.max(1, now.positions.length);
  const most = moved.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);
  if (rms > 0.02 * step) {
    changes.push({
      where: 'middles of the words',
      before: 'as in the table before',
      now: `moved by ${showDegrees(rms)} root mean square, ${showDegrees(most)} at most`,
      matters: Math.abs(most) > STEP_SHARE * step,
    });
  }
  return changes;
}
