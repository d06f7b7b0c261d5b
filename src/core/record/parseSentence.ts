import type { Problem } from '../error/index.ts';
import { shownText } from './parseLine.ts';
import { KNOTS_PER_M_PER_S, sentenceCheck, type WindSentence } from './sentence.ts';

/** A sentence that was read, or the one reason why it was not. */
export type ParsedSentence =
  { readonly ok: true; readonly sentence: WindSentence } | { readonly ok: false; readonly refusal: Problem };

/** Longest sentence of the standard, `$` and line end counted. [characters] */
const SENTENCE_MOST = 82;

const leaveOut = 'Leave this sentence out; the next good one is complete by itself.';

const reasons = {
  'record/sentence-foreign': {
    what: 'The text is not a wind sentence.',
    allowed: '$ with two letters for the sender, then MWD or MWV, at most 80 characters of printable ASCII',
    fix: leaveOut,
  },
  'record/sentence-check': {
    what: 'The check value does not fit the sentence: some of it was lost or changed on the way.',
    allowed: '* and two digits 0-9 A-F at the end: all bytes between $ and * combined by exclusive or',
    fix: leaveOut,
  },
  'record/sentence-value': {
    what: 'A field of the sentence holds what the standard does not have.',
    allowed: 'directions from 0 to below 360, speeds of 0 or more, and the units of the standard',
    fix: 'If every sentence looks like this, check how the sender is set.',
  },
} as const;

function refusal(code: keyof typeof reasons, where: string, got: string): ParsedSentence {
  return { ok: false, refusal: { code, where, got: shownText(got), ...reasons[code] } };
}

/** A number of a field, `null` when it is blank, `undefined` when it is none. */
function number(text: string): number | null | undefined {
  if (text === '') return null;
  return /^\d{1,4}(\.\d{1,4})?$/.test(text) ? Number(text) : undefined;
}

/** Metres a second in one unit of speed, by its letter: kilometres an hour, metres a second, knots, miles an hour. */
const speedUnits: Readonly<Record<string, number>> = {
  K: 1 / 3.6,
  M: 1,
  N: 1 / KNOTS_PER_M_PER_S,
  S: 0.447_04,
};

/** Direction in range, `null` when blank; 360 is north, as some senders write it. `undefined` otherwise. */
function direction(text: string): number | null | undefined {
  const value = number(text);
  if (value === undefined || value === null) return value;
  return value > 360 ? undefined : value % 360;
}

function mwv([angle, reference, speed, unit, status]: readonly string[]): ParsedSentence {
  const directionDeg = direction(angle!);
  if (directionDeg === undefined) return refusal('record/sentence-value', 'direction', angle!);
  if (!/^[RT]$/.test(reference!)) return refusal('record/sentence-value', 'reference', reference!);
  const factor = speedUnits[unit!];
  const value = number(speed!);
  if (value === undefined) return refusal('record/sentence-value', 'speed', speed!);
  if (factor === undefined && value !== null) return refusal('record/sentence-value', 'unit', unit!);
  if (!/^[AV]$/.test(status!)) return refusal('record/sentence-value', 'status', status!);
  return {
    ok: true,
    sentence: {
      kind: 'mwv',
      directionDeg,
      speedMPerS: value === null ? null : value * factor!,
      reference: reference === 'R' ? 'relative' : 'theoretical',
      isValid: status === 'A',
    },
  };
}

function mwd([truth, t, magnetic, m, knots, n, metres, second]: readonly string[]): ParsedSentence {
  const directionDeg = direction(truth!);
  if (directionDeg === undefined) return refusal('record/sentence-value', 'direction', truth!);
  if (direction(magnetic!) === undefined) return refusal('record/sentence-value', 'magnetic', magnetic!);
  const units = [t, m, n, second].join('');
  if (units !== 'TMNM') return refusal('record/sentence-value', 'unit', units);
  const inKnots = number(knots!);
  if (inKnots === undefined) return refusal('record/sentence-value', 'speed', knots!);
  const inMetres = number(metres!);
  if (inMetres === undefined) return refusal('record/sentence-value', 'speed', metres!);
  // Both say the same, to the rounding of a tenth each; then the finer one of the two is kept.
  const fromKnots = inKnots === null ? null : inKnots / KNOTS_PER_M_PER_S;
  if (fromKnots !== null && inMetres !== null && Math.abs(fromKnots - inMetres) > 0.08) {
    return refusal('record/sentence-value', 'speed', `${knots} knots and ${metres} m/s`);
  }
  const speedMPerS = inMetres ?? fromKnots;
  return {
    ok: true,
    sentence: { kind: 'mwd', directionDeg, speedMPerS, reference: null, isValid: directionDeg !== null },
  };
}

/**
 * The wind that a sentence carries, from any sender; it never throws and never repairs.
 *
 * @param text - One sentence; a carriage return at its end is allowed.
 * @returns Direction [deg] and speed [m/s]; blank fields are `null`.
 * @source NMEA 0183 sentences MWD and MWV, as described in public references; a knot is 1852/3600 m/s, a mile an hour
 * 0.44704 m/s.
 * @check src/core/record/sentence.test.ts
 */
export function parseSentence(text: string): ParsedSentence {
  const bare = text.endsWith('\r') ? text.slice(0, -1) : text;
  const isPlain = bare.length <= SENTENCE_MOST - 2 && /^\$[\x20-\x7e]*$/.test(bare);
  const [, kind] = /^\$[A-Z]{2}(MWD|MWV),/.exec(bare) ?? [];
  if (!isPlain || kind === undefined) return refusal('record/sentence-foreign', 'sentence', bare);
  const [, content, check] = /^\$([^*]*)\*([\dA-F]{2})$/.exec(bare) ?? [];
  if (content === undefined || sentenceCheck(content) !== check) {
    return refusal('record/sentence-check', 'check value', bare.slice(bare.lastIndexOf('*')));
  }
  const fields = content.split(',').slice(1);
  const wanted = kind === 'MWD' ? 8 : 5;
  if (fields.length !== wanted) return refusal('record/sentence-value', 'fields', `${fields.length} fields`);
  return kind === 'MWD' ? mwd(fields) : mwv(fields);
}
