import type { HeadPlan } from '../../head/index.ts';
import { showNumber } from '../../units/index.ts';
import type { Fit, Unknown } from '../fit.ts';

/** Less than this is no full turn. [turns] */
const WHOLE_TURN = 0.995;

/** What a recording leaves open, each with what to record next. */
export function unknownsOf(fit: Omit<Fit, 'unknowns' | 'verdict' | 'reasons'>, head: HeadPlan): Unknown[] {
  const { recording, wiring, disc } = fit;
  const unknowns: Unknown[] = [];
  const add = (what: string, why: string, recordNext: string): void =>
    void unknowns.push({ what, why, recordNext });
  if (!recording.hasTimes && recording.content !== 'numbers') {
    add(
      'The true width of each word',
      'The rows have no times, so even spacing was assumed.',
      'Send the milliseconds in front of every row.',
    );
  }
  const silent = fit.channels.filter(({ column }) => column === null);
  if (wiring && silent.length > 0) {
    const names = silent.map(({ channel }) => channel).join(' and ');
    add(
      'Where each word begins and ends',
      `Channel ${names} never changes, so words that differ only in it look alike.`,
      `Mend channel ${names} first, then record two whole turns.`,
    );
  }
  const undecided = fit.channels.filter((channel) => channel.undecided && channel.column !== null);
  if (undecided.length > 0) {
    add(
      `Which input is channel ${undecided.map(({ channel }) => channel).join(' and ')}`,
      'Too little of the turn was seen to tell; the drawing was believed for now, and no table is written.',
      'Record at least one whole turn.',
    );
  }
  if (disc && !isWholeTurn(fit)) {
    add(
      'Positions that were not passed',
      `The recording covers ${showNumber(disc.turns, 2)} of a turn.`,
      'Record at least one whole turn, better two each way.',
    );
  }
  if (wiring && wiring.reversed === null) {
    add(
      'Whether headings run the right way round',
      'Nobody said which way the vane was turned.',
      'Say it with --turned clockwise, or put cw or ccw into the name of the file.',
    );
  }
  if (disc && disc.playDeg === null) {
    add(
      'Play between vane and disc',
      'Only the disc is seen, not the vane.',
      'Hold the vane at the same known angles coming from either side, and note them in a column called mark.',
    );
  }
  if (wiring && wiring.alternatives.length > 0 && wiring.confidence < 0.9) {
    add(
      'Which of several wirings is the real one',
      `As good as the one taken: ${wiring.alternatives.slice(0, 3).join('; or ')}.`,
      'Begin with the index mark under the reference line and say --starts-at 0; turn slowly, and say which way.',
    );
  }
  const { bore } = disc ?? {};
  if (bore && bore.offMm.sigma > 0.15 && bore.offMm.value < 2 * bore.offMm.sigma) {
    const radii = head.channels.map(({ radiusMm }) => radiusMm);
    add(
      'How far the bore is off centre',
      `It cannot be told from your hand's own speed better than within ${showNumber(bore.offMm.sigma, 2)} mm: tracks at ` +
        `${showNumber(Math.min(...radii), 0)} to ${showNumber(Math.max(...radii), 0)} mm see nearly the same of it.`,
      'Hold the vane at known angles every 30 degrees and note them in a column called mark.',
    );
  }
  return unknowns;
}

/** Whether every place of the disc was passed at least once. */
export function isWholeTurn({ disc }: Pick<Fit, 'disc'>): boolean {
  return (
    disc !== null &&
    disc.turns >= WHOLE_TURN &&
    disc.positions.filter(({ seen }) => seen).length >= 0.5 * disc.positions.length
  );
}
