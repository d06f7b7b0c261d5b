import type { Problem } from '../error/index.ts';
import { LINE_CHANNELS_MOST, LINE_TAG, lineCharsAtMost, lineFields } from './line.ts';

const resend = 'Leave this line out; the counters of the next good line tell what was missed.';

/** Every reason for not reading a line, with what a good one has; docs/errors/record.md says more. */
export const refusals = {
  'record/line-long': {
    what: 'The text is longer than any line can be.',
    allowed: `at most ${lineCharsAtMost(LINE_CHANNELS_MOST) - 1} characters`,
    fix: 'Check that the source is a controller and that lines end with a line feed.',
  },
  'record/line-characters': {
    what: 'The line holds a character that no line has.',
    allowed: 'printable ASCII only',
    fix: 'If most lines look like this, set the serial speed of controller.baud; else leave this line out.',
  },
  'record/line-foreign': {
    what: 'The text is not one of our lines.',
    allowed: `a line that begins with ${LINE_TAG} and a space`,
    fix: resend,
  },
  'record/line-version': {
    what: 'The line is of a version that this program does not know.',
    allowed: LINE_TAG,
    fix: 'Use the vanewright version that wrote the controller program, or write the program again.',
  },
  'record/line-fields': {
    what: 'The line has too many or too few fields.',
    allowed: `${lineFields.length + 2} fields with one space between them`,
    fix: resend,
  },
  'record/line-check': {
    what: 'The check value does not fit the line: some of it was lost or changed on the way.',
    allowed: 'four digits 0-9 A-F, the check value of all before the last space',
    fix: resend,
  },
  'record/line-value': {
    what: 'A field holds a value that the format does not have, although the check value is right.',
    allowed: 'the values of docs/line-format.md',
    fix: 'Load the controller with the program that vanewright made, unchanged.',
  },
  'record/line-contradicts': {
    what: 'Two fields of the line contradict each other, although the check value is right.',
    allowed:
      'a digit of the word for each count or for three of them, and no heading exactly when flag w is set',
    fix: 'Load the controller with the program that vanewright made, unchanged.',
  },
} as const satisfies Record<string, Pick<Problem, 'what' | 'allowed' | 'fix'>>;

/** Code of one reason. */
export type RefusalCode = keyof typeof refusals;
