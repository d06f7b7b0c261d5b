/** One line as bytes, kept one character a byte. */
export interface ByteLine {
  /** Line of the source, from 1. [-] */
  readonly number: number;
  /** Each character is one byte, 0 to 255. */
  readonly bytes: string;
}

/** What else was found. */
export interface ByteNote {
  readonly kind: 'empty-bytes' | 'too-long' | 'byte-order-mark' | 'wide-text';
  readonly line: number;
  /** Bytes for `empty-bytes`, else 1. [-] */
  readonly count: number;
}

/** Everything a `LineSplitter` remembers between two pieces. */
export interface SplitterState {
  readonly rest: string;
  readonly line: number;
  /** Bytes of a line far too long, already let go. [byte] */
  readonly lost: number;
  readonly afterReturn: boolean;
  readonly wide: 'no' | 'little' | 'big' | 'unknown';
  /** Empty bytes already taken out of the line that goes on. [byte] */
  readonly empty: number;
}

/** Nothing read yet. */
export const NOTHING_SPLIT: SplitterState = {
  rest: '',
  line: 0,
  lost: 0,
  afterReturn: false,
  wide: 'unknown',
  empty: 0,
};

/** Longest line that is looked at; nothing a sensor sends comes near. [byte] */
export const LINE_BYTES_MOST = 65_536;
/** Bytes of 0, and of 255 where four in a row tell that they are no letters of a national alphabet. */
const EMPTY = /\0+|\u00ff{4,}/g;
const PIECE = 8192;

/** One character a byte. */
export function bytesText(bytes: Uint8Array): string {
  if (bytes.length <= PIECE) return String.fromCharCode.apply(null, bytes as unknown as number[]);
  let text = '';
  for (let at = 0; at < bytes.length; at += PIECE) {
    text += String.fromCharCode.apply(null, bytes.subarray(at, at + PIECE) as unknown as number[]);
  }
  return text;
}

/** Cuts bytes into lines as they come: LF, CR LF or CR, UTF-16 made narrow, empty bytes taken out, memory bounded. */
export class LineSplitter {
  #state: SplitterState;
  #notes: ByteNote[] = [];

  /** @param state - As `state` gave it, to go on from there. */
  constructor(state: SplitterState = NOTHING_SPLIT) {
    this.#state = state;
  }

  get state(): SplitterState {
    return this.#state;
  }

  /** Counts a line that is read elsewhere; gives back its number. [-] */
  skip(): number {
    this.#state = { ...this.#state, line: this.#state.line + 1 };
    return this.#state.line;
  }

  /** Notes since the last call. */
  notes(): ByteNote[] {
    const notes = this.#notes;
    this.#notes = [];
    return notes;
  }

  /**
   * @param bytes - The next piece, of any size. [byte]
   * @returns The lines it completes.
   */
  take(bytes: Uint8Array): ByteLine[] {
    let text = this.#state.rest + bytesText(bytes);
    this.#state = { ...this.#state, rest: '' };
    if (this.#state.wide === 'unknown') {
      if (text.length < 4) {
        this.#state = { ...this.#state, rest: text };
        return [];
      }
      text = this.#withoutMark(text);
    }
    if (this.#state.wide === 'little' || this.#state.wide === 'big') return this.#takeWide(text);
    return this.#lines(text);
  }

  /** The line that was begun and will not be ended, if there is one. */
  end(): ByteLine[] {
    const { rest, lost, wide, empty } = this.#state;
    this.#state = { ...this.#state, wide: wide === 'unknown' ? 'no' : wide };
    if (rest === '' && lost === 0 && empty === 0) return [];
    this.#state = { ...this.#state, rest: '' };
    const isWide = wide === 'little' || wide === 'big';
    return this.#lines(`${isWide ? utf8Bytes(narrowed(rest, wide === 'little')) : rest}\n`);
  }

  /** Takes a byte order mark off, and finds out whether two bytes make a character. */
  #withoutMark(text: string): string {
    const wide = wideOf(text);
    this.#state = { ...this.#state, wide };
    if (wide !== 'no') {
      this.#notes.push({ kind: 'wide-text', line: 0, count: 1 });
      return text.slice(2);
    }
    if (!text.startsWith('\u00ef\u00bb\u00bf')) return text;
    this.#notes.push({ kind: 'byte-order-mark', line: 0, count: 1 });
    return text.slice(3);
  }

  /** UTF-16 to UTF-8, one character a byte still; an odd last byte or half a pair waits. */
  #takeWide(text: string): ByteLine[] {
    const isLittle = this.#state.wide === 'little';
    const narrow = narrowed(text, isLittle);
    const cut = Math.max(narrow.lastIndexOf('\n'), narrow.lastIndexOf('\r')) + 1;
    // Whole lines only: what is behind them waits as it came.
    const waits = text.slice(2 * cut);
    const lines = cut === 0 ? [] : this.#lines(utf8Bytes(narrow.slice(0, cut)));
    if (waits.length > 2 * LINE_BYTES_MOST) {
      const { line, lost } = this.#state;
      this.#state = { ...this.#state, lost: lost + waits.length, line };
      return lines;
    }
    this.#state = { ...this.#state, rest: waits };
    return lines;
  }

  #lines(text: string): ByteLine[] {
    const whole = this.#state.afterReturn && text.startsWith('\n') ? text.slice(1) : text;
    const parts = whole.includes('\r') ? whole.split(/\r\n|\r|\n/) : whole.split('\n');
    const rest = parts.pop()!;
    const lines: ByteLine[] = [];
    let { line, lost, empty } = this.#state;
    for (const part of parts) {
      line++;
      const { bytes, taken } = withoutEmpty(part);
      if (taken + empty > 0) this.#notes.push({ kind: 'empty-bytes', line, count: taken + empty });
      if (lost > 0 || bytes.length > LINE_BYTES_MOST) {
        this.#notes.push({ kind: 'too-long', line, count: 1 });
      } else if (bytes !== '') lines.push({ number: line, bytes });
      lost = 0;
      empty = 0;
    }
    // A power cut leaves megabytes of nothing, which are no line too long.
    const held = rest.length > LINE_BYTES_MOST ? withoutEmpty(rest) : { bytes: rest, taken: 0 };
    const isTooLong = held.bytes.length > LINE_BYTES_MOST || (lost > 0 && held.bytes !== '');
    const afterReturn = text === '' ? this.#state.afterReturn : text.endsWith('\r');
    this.#state = {
      ...this.#state,
      line,
      lost: isTooLong ? lost + held.bytes.length : lost,
      empty: empty + held.taken,
      rest: isTooLong ? '' : held.bytes,
      afterReturn,
    };
    return lines;
  }
}

/** Bytes without the empty ones that a power cut leaves, and how many those were. */
function withoutEmpty(part: string): { readonly bytes: string; readonly taken: number } {
  if (!part.includes('\0') && !part.includes('\u00ff\u00ff\u00ff\u00ff')) return { bytes: part, taken: 0 };
  const bytes = part.replace(EMPTY, '');
  return { bytes, taken: part.length - bytes.length };
}

/** Text of digits has a zero in every second byte; rubbish that begins like a mark has not. */
function wideOf(text: string): 'no' | 'little' | 'big' {
  const first = text.slice(0, 2);
  const looked = text.slice(2, 400);
  const zeros = (from: number): number => {
    let [found, all] = [0, 0];
    for (let i = from; i < looked.length; i += 2, all++) found += Number(looked.charCodeAt(i) === 0);
    return all === 0 ? 0 : found / all;
  };
  if (first === '\u00ff\u00fe' && zeros(1) > 0.9) return 'little';
  return first === '\u00fe\u00ff' && zeros(0) > 0.9 ? 'big' : 'no';
}

/** Two bytes to a character; an odd last byte is left out. */
function narrowed(text: string, isLittle: boolean): string {
  let narrow = '';
  for (let i = 0; i + 1 < text.length; i += 2) {
    const [a, b] = [text.charCodeAt(i), text.charCodeAt(i + 1)];
    narrow += String.fromCharCode(isLittle ? a | (b << 8) : (a << 8) | b);
  }
  return narrow;
}

/** UTF-8 of a text, one character a byte. */
function utf8Bytes(text: string): string {
  if (/^[\x00-\x7f]*$/.test(text)) return text;
  return encodeURIComponent(text.replace(/[\ud800-\udfff]/g, '\ufffd')).replace(
    /%([0-9A-F]{2})/g,
    (_, hex: string) => String.fromCharCode(parseInt(hex, 16)),
  );
}
