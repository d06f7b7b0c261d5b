/** Longest line of the program's text. [characters] */
const WIDTH = 96;

/** Longest piece of the maker's own words in a comment. [characters] */
const WORDS_MOST = 72;

/**
 * The maker's own words so that they can stand in a `//` comment and do nothing there.
 *
 * Only letters, digits and a few signs stay. A backslash (it joins lines), `/`, `*`, `?` (three signs of it can mean
 * a backslash), quotes, line ends, and invisible or direction-changing characters become spaces.
 */
export function inertWords(words: string): string {
  const kept = words.replace(/[^\p{L}\p{M}\p{N}.,:;+()'&_=-]+/gu, ' ').trim();
  const characters = Array.from(kept);
  return characters.length > WORDS_MOST ? `${characters.slice(0, WORDS_MOST - 3).join('')}...` : kept;
}

/** Heading of a section of the program. */
export function sectionHeading(title: string): string {
  return `// ---- ${title} ${'-'.repeat(Math.max(3, WIDTH - title.length - 9))}`;
}

/** A braced list of values, broken into lines that fit. [any unit], n ≥ 1 */
export function braced(values: readonly (number | string)[]): string {
  const lines: string[] = [];
  let line = '';
  for (const [i, value] of values.entries()) {
    const piece = i < values.length - 1 ? `${value},` : String(value);
    if (line !== '' && line.length + piece.length + 3 > WIDTH) {
      lines.push(line);
      line = '';
    }
    line += line === '' ? piece : ` ${piece}`;
  }
  lines.push(line);
  return lines.length === 1 && lines[0]!.length < 40 ? `{${lines[0]}}` : `{\n  ${lines.join('\n  ')}\n}`;
}
