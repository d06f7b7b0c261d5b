import type { Problem } from '../../error/index.ts';

/** Largest instrument file that is read: a thousand times a usual one. [byte] */
export const INSTRUMENT_FILE_MOST_BYTES = 1_048_576;

/** Bytes of the text as UTF-8. [byte] */
function utf8Bytes(text: string): number {
  let bytes = 0;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    const halfOfPair = unit >= 0xd800 && unit <= 0xdfff;
    bytes += unit < 0x80 ? 1 : unit < 0x800 || halfOfPair ? 2 : 3;
  }
  return bytes;
}

/** What is wrong with the size of the text, or `null`. */
export function sizeProblem(text: string, fileName: string): Problem | null {
  const most = INSTRUMENT_FILE_MOST_BYTES;
  const bytes = text.length > most ? text.length : utf8Bytes(text);
  if (bytes <= most) return null;
  return {
    code: 'instrument/too-large',
    what: 'The file is far too large for an instrument file.',
    where: fileName,
    got: text.length > most ? `more than ${most} bytes` : `${bytes} bytes`,
    allowed: `at most ${most} bytes (1 MiB)`,
    fix: 'Name the instrument file itself; a usual one has a few thousand bytes.',
  };
}

/** Text as the YAML reader wants it: no byte order mark, every line break a line feed or CR LF; places stay true. */
export function plainText(text: string): string {
  return text.replace(/^\ufeff/, '').replace(/\r(?!\n)/g, '\n');
}

/** What no text file holds: control characters, and the mark a decoder leaves where bytes were not UTF-8. */
const NOT_TEXT = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\ufffd]/;

/** What is wrong with the first character that no text holds, or `null`. */
export function characterProblem(text: string, placeAt: (offset: number) => string): Problem | null {
  const offset = text.search(NOT_TEXT);
  if (offset < 0) return null;
  const code = text.charCodeAt(offset);
  return {
    code: 'instrument/not-text',
    what:
      code === 0xfffd ? 'The file is not UTF-8 text.' : 'The file holds a character that no text file has.',
    where: placeAt(offset),
    got: code === 0xfffd ? 'bytes that are not UTF-8' : `character number ${code}`,
    allowed: 'plain text in UTF-8',
    fix: 'Open the file in a text editor, check this place, and save it as UTF-8.',
  };
}
