import type { HeadPlan } from '../../head/index.ts';
import { showNumber } from '../../units/index.ts';
import type { Fit, Unknown } from '../fit.ts';

/** Less than this is no full turn. [turns] */
const WHOLE_TURN = 0.995;

type Known = Omit<Fit, 'unknowns' | 'verdict' | 'reasons'>;

const unknown = (what: string, why: string, recordNext: string): Unknown => ({ what, why, recordNext });

/** What a recording leaves open, each with what to record next. */
export function unknownsOf(fit: Known, head: HeadPlan): Unknown[] {
  return [...turnUnknowns(fit), ...wiringUnknowns(fit), ...discUnknowns(fit, head)];
}

function turnUnknowns(fit: Known): Unknown[] {
  const { recording, disc } = fit;
  const unknowns: Unknown[] = [];
  if (!recording.hasTimes && recording.content !== 'numbers') {
    unknowns.push(
      unknown(
        'The true width of each word',
        'The rows have no times, so even spacing was assumed.',
        'Send the milliseconds in front of every row.',
      ),
    );
  }
  if (disc && !isWholeTurn(fit)) {
    unknowns.push(
      unknown(
        'Positions that were not passed',
        `The recording covers ${showNumber(disc.turns, 2)} of a turn.`,
        'Record at least one whole turn, better two each way.',
      ),
    );
  }
  return unknowns;
}

function wiringUnknowns({ wiring, channels }: Known): Unknown[] {
  if (!wiring) return [];
  const unknowns: Unknown[] = [];
  const named = (some: Fit['channels']): string => some.map(({ channel }) => channel).join(' and ');
  const silent = channels.filter(({ column }) => column === null);
  const undecided = channels.filter((channel) => channel.undecided && channel.column !== null);
  if (silent.length > 0) {
    unknowns.push(
      unknown(
        'Where each word begins and ends',
        `Channel ${named(silent)} never changes, so words that differ only in it look alike.`,
        `Mend channel ${named(silent)} first, then record two whole turns.`,
      ),
    );
  }
  if (undecided.length > 0) {
    unknowns.push(
      unknown(
        `Which input is channel ${named(undecided)}`,
        'Too little of the turn was seen to tell; the drawing was believed for now, and no table is written.',
        'Record at least one whole turn.',
      ),
    );
  }
  if (wiring.reversed === null) {
    unknowns.push(
      unknown(
        'Whether headings run the right way round',
        'Nobody said which way the vane was turned.',
        'Say it with --turned clockwise, or put cw or ccw into the name of the file.',
      ),
    );
  }
  if (wiring.alternatives.length > 0 && wiring.confidence < 0.9) {
    unknowns.push(
      unknown(
        'Which of several wirings is the real one',
        `As good as the one taken: ${wiring.alternatives.slice(0, 3).join('; or ')}.`,
        'Begin with the index mark under the reference line and say --starts-at 0; turn slowly, and say which way.',
      ),
    );
  }
  return unknowns;
}

function discUnknowns({ disc }: Known, head: HeadPlan): Unknown[] {
  if (!disc) return [];
  const unknowns: Unknown[] = [];
  if (disc.playDeg === null) {
    unknowns.push(
      unknown(
        'Play between vane and disc',
        'Only the disc is seen, not the vane.',
        'Hold the vane at the same known angles coming from either side, and note them in a column called mark.',
      ),
    );
  }
  const { offMm } = disc.bore;
  if (offMm.sigma > 0.15 && offMm.value < 2 * offMm.sigma) {
    const radii = head.channels.map(({ radiusMm }) => radiusMm);
    unknowns.push(
      unknown(
        'How far the bore is off centre',
        `It cannot be told from your hand's own speed better than within ${showNumber(offMm.sigma, 2)} mm: tracks at ` +
          `${showNumber(Math.min(...radii), 0)} to ${showNumber(Math.max(...radii), 0)} mm see nearly the same of it.`,
        'Hold the vane at known angles every 30 degrees and note them in a column called mark.',
      ),
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
