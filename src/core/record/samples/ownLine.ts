import { parseJsonLine } from '../jsonLine.ts';
import type { LedgerReason } from '../ledger/ledgerReasons.ts';
import type { Line } from '../line.ts';
import { parsePack, type PackRecord } from '../pack.ts';
import { parseLine } from '../parseLine.ts';
import { parseSentence } from '../parseSentence.ts';
import type { WindSentence } from '../sentence.ts';
import { parseStatus } from '../statusLine.ts';

/** What one line of a controller or of a standard sender holds. */
export type OwnLine =
  | { readonly kind: 'line'; readonly line: Line }
  | { readonly kind: 'status' }
  | { readonly kind: 'sentence'; readonly sentence: WindSentence }
  | { readonly kind: 'pack'; readonly records: readonly PackRecord[] }
  | { readonly kind: 'bad'; readonly reason: LedgerReason };

/** One piece of a line that came in, and what it holds. */
export interface OwnPiece {
  readonly text: string;
  readonly holds: OwnLine;
}

/** Where a line of any of these forms begins. */
const STARTS = /vw1 |vws1 |\{"vw":|\$[A-Z]{2}MW[DV],|\[\{"/g;
const PRINTABLE = /^[\x20-\x7e]*$/;
/** Characters of the text line and of nothing longer than its flags. */
const LINE_PART = /^(?=.*\d|.*[0-9A-F]{4}$)[\d ,?\-]*([jpwisdlar]{1,9}[\d ,?\-]*)?[0-9A-F ]*$/;
const JSON_PART =
  /"(lineNumber|sinceStartMs|counts|word|headingDeg|halfWidthDeg|flags|average|cups|check|bn|bt|n|v|u)"/;
const SENTENCE_PART = /^\$|,[TMNRKAV]\*[0-9A-F]{0,2}$|^[\d.,TMNRKAV]+\*[0-9A-F]{0,2}$/;

/** Whether a text begins as one of these lines does. */
export function beginsAsOwn(text: string): boolean {
  return /^(vw1 |vws1 |\{"vw":|\$[A-Z]{2}MW[DV],|\[\{")/.test(text);
}

function parsed(text: string): OwnLine {
  const bad = (code: string): OwnLine => ({ kind: 'bad', reason: reasonOf(code, text) });
  if (text.startsWith('{')) {
    const json = parseJsonLine(text);
    return json.ok ? { kind: 'line', line: json.line } : bad(json.refusal.code);
  }
  if (text.startsWith('$')) {
    const sentence = parseSentence(text);
    return sentence.ok ? { kind: 'sentence', sentence: sentence.sentence } : bad(sentence.refusal.code);
  }
  if (text.startsWith('[')) {
    const pack = parsePack(text);
    return pack.ok ? { kind: 'pack', records: pack.records } : bad(pack.refusal.code);
  }
  if (text.startsWith('vws')) {
    const status = parseStatus(text);
    return status.ok ? { kind: 'status' } : bad(status.refusal.code);
  }
  const line = parseLine(text);
  return line.ok ? { kind: 'line', line: line.line } : bad(line.refusal.code);
}

/** What is wrong with a text, in the words of the ledger. */
function reasonOf(code: string, text: string): LedgerReason {
  if (!PRINTABLE.test(text)) return 'rubbish';
  if (code === 'record/line-long') return 'too-long';
  if (text.startsWith('$') && !/\*[0-9A-F]{2}$/.test(text)) return 'cut-line';
  if (code.endsWith('-check')) return 'check-failed';
  if (code.endsWith('-value') || code.endsWith('-contradicts')) return 'bad-value';
  if (code === 'record/line-fields') return text.split(' ').length > 14 ? 'glued-line' : 'cut-line';
  const isPart =
    beginsAsOwn(text) || LINE_PART.test(text) || JSON_PART.test(text) || SENTENCE_PART.test(text);
  return isPart ? 'cut-line' : 'not-a-line';
}

/**
 * What a line holds; lines that ran together are parted where another one begins.
 *
 * @param text - One line, without its end and without a monitor's time.
 * @returns The whole line as one piece when it can be read, else its pieces, good and bad. n ≥ 1
 * @check src/core/record/samples/ownLine.test.ts
 */
export function ownPieces(text: string): OwnPiece[] {
  const whole = parsed(text);
  if (whole.kind !== 'bad') return [{ text, holds: whole }];
  const starts = [...text.matchAll(STARTS)].map(({ index }) => index).filter((index) => index > 0);
  if (starts.length === 0) return [{ text, holds: whole }];
  const cuts = [0, ...starts, text.length];
  const pieces = cuts.slice(1).map((to, i) => text.slice(cuts[i], to));
  return pieces.map((piece) => ({ text: piece, holds: parsed(piece) }));
}
