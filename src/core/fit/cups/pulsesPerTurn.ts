import { cupsRefusal } from './refusals.ts';

/** Fewer turns than this make one lost pulse look like another number. [-] */
const LEAST_TURNS = 5;
/** How far from a whole number a count may be. [-] */
const MOST_OFF = 0.12;

/** Pulses of one turn of the cups, counted by hand. */
export interface PulsesPerTurn {
  readonly pulsesPerTurn: number;
  /** What to look at, or nothing. */
  readonly cautions: readonly string[];
}

/**
 * Pulses a turn from turning the cups by hand and counting.
 *
 * @param pulses - Pulses that the instrument counted, quiet time applied. [-]
 * @param turns - Turns of the cups by hand. [-], 5 or more
 * @param edges - Raw edges it saw, bounces too; `null` when not known. [-]
 * @returns A whole number, 1 or more.
 * @throws `fit/too-few-turns`, `fit/pulses-not-whole`
 */
export function pulsesPerTurn(pulses: number, turns: number, edges: number | null): PulsesPerTurn {
  if (!(turns >= LEAST_TURNS)) {
    throw cupsRefusal('fit/too-few-turns', {
      what: 'Too few turns to tell a lost pulse from another number of contacts.',
      where: 'turns',
      got: `${turns} turns`,
      allowed: `${LEAST_TURNS} turns or more`,
      fix: 'Mark one cup, turn the cups slowly by hand 10 times, and count again.',
    });
  }
  const each = pulses / turns;
  const whole = Math.round(each);
  if (whole < 1 || Math.abs(each - whole) > MOST_OFF) {
    throw cupsRefusal('fit/pulses-not-whole', {
      what: 'The pulses do not come to a whole number a turn: some are lost, or bounces are counted.',
      where: 'pulses',
      got: `${pulses} pulses in ${turns} turns, ${each.toFixed(2)} a turn`,
      allowed: `within ${MOST_OFF} of a whole number`,
      fix: 'Raise cups.quietUs if it is above a whole number, turn more slowly if below, and count again.',
    });
  }
  const cautions: string[] = [];
  if (edges !== null && edges > 0 && pulses > 1.5 * (edges / 2)) {
    cautions.push(
      'Nearly every edge was counted: a program that counts opening and closing gives twice the speed.',
    );
  }
  return { pulsesPerTurn: whole, cautions };
}
