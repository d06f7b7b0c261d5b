import type { ProgramFacts } from '../facts.ts';
import { positionBytes, type WordTable } from '../wordTable.ts';
import { braced, sectionHeading } from './text.ts';

/** Integer type of a position and how it is read from program memory. */
export function positionType(positions: number): { type: string; read: string; none: number } {
  return positionBytes(positions) === 1
    ? { type: 'uint8_t', read: 'pgm_read_byte', none: 255 }
    : { type: 'uint16_t', read: 'pgm_read_word', none: 65_535 };
}

function denseText(positions: readonly (number | null)[], type: string, read: string, none: number): string {
  return `// Position of every word the channels can show; ${none} where the disc does not have that word.
const ${type} POSITION_OF_WORD[${positions.length}] PROGMEM = ${braced(positions.map((p) => p ?? none))};

${type} positionOf(uint16_t word) {
  return ${read}(&POSITION_OF_WORD[word]);
}`;
}

function sortedText(table: Extract<WordTable, { kind: 'sorted' }>, type: string, read: string): string {
  return `// The words of the disc in rising order, and the position of each.
const uint16_t SORTED_WORD[POSITIONS] PROGMEM = ${braced(table.words)};
const ${type} SORTED_POSITION[POSITIONS] PROGMEM = ${braced(table.positions)};

// Halves the list until the word is found, or there is nothing left.
${type} positionOf(uint16_t word) {
  uint16_t from = 0;
  uint16_t to = POSITIONS;
  while (from < to) {
    const uint16_t middle = from + (to - from) / 2;
    const uint16_t found = pgm_read_word(&SORTED_WORD[middle]);
    if (found == word) return ${read}(&SORTED_POSITION[middle]);
    if (found < word) from = middle + 1;
    else to = middle;
  }
  return NO_POSITION;
}`;
}

/** One number when all steps are alike, else one a position. */
function halfWidthText(halfWidths: readonly number[], type: string): string {
  const widest = Math.max(...halfWidths);
  if (halfWidths.every((width) => width === widest)) {
    return `// Half of one step, in hundredths of a degree.
inline uint16_t halfWidth(${type}) {
  return ${widest};
}`;
  }
  return `// Half of the piece of the turn that shows each position, in hundredths of a degree.
const uint16_t HALF_WIDTH[POSITIONS] PROGMEM = ${braced(halfWidths)};

inline uint16_t halfWidth(${type} at) {
  return pgm_read_word(&HALF_WIDTH[at]);
}`;
}

/** The code: word to position, position to heading. */
export function discText(facts: ProgramFacts): string {
  const { positions, table, headingHundredths, halfWidthHundredths, channels, levelCount } = facts;
  const { type, read, none } = positionType(positions);
  const decode =
    table.kind === 'dense' ? denseText(table.positions, type, read, none) : sortedText(table, type, read);
  return `${sectionHeading('Disc')}

const uint8_t LEVELS = ${levelCount};
const uint8_t LEVEL_BITS = ${levelCount - 1};
const uint16_t ALL_BITS = ${2 ** ((levelCount - 1) * channels.length) - 1};
const uint16_t POSITIONS = ${positions};
const ${type} NO_POSITION = ${none};

// Heading at the middle of each position before north is added, in hundredths of a degree clockwise.
const uint16_t HEADING[POSITIONS] PROGMEM = ${braced(headingHundredths)};

${halfWidthText(halfWidthHundredths, type)}

// A word holds LEVEL_BITS bits a channel, channel 0 the highest.
${decode}

// Hundredths of a degree between two headings, the shorter way round.
uint16_t apart(uint16_t one, uint16_t other) {
  const uint16_t between = one > other ? one - other : other - one;
  return between > 18000 ? 36000 - between : between;
}

// Hundredths of a degree between the pieces of the turn that two positions show; 0 for neighbours.
uint16_t gapBetween(${type} one, ${type} other) {
  const uint16_t between = apart(pgm_read_word(&HEADING[one]), pgm_read_word(&HEADING[other]));
  const uint16_t shown = halfWidth(one) + halfWidth(other) + ${facts.slackHundredths};
  return between > shown ? between - shown : 0;
}`;
}
