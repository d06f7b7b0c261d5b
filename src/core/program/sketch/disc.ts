import type { ProgramFacts } from '../facts.ts';
import { positionBytes, type WordTable } from '../wordTable.ts';
import { braced, sectionHeading } from './text.ts';

/** Integer type of a position and how it is read from program memory. */
function positionType(positions: number): { type: string; read: string; none: number } {
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

/** The code: word to position, position to heading. */
export function discText({ positions, table, headingHundredths, stepUs, halfTurnMs }: ProgramFacts): string {
  const { type, read, none } = positionType(positions);
  const decode =
    table.kind === 'dense' ? denseText(table.positions, type, read, none) : sortedText(table, type, read);
  return `${sectionHeading('Disc')}

const uint16_t POSITIONS = ${positions};
const ${type} NO_POSITION = ${none};

// Heading at the middle of each position, in hundredths of a degree clockwise from true north.
const uint16_t HEADING[POSITIONS] PROGMEM = ${braced(headingHundredths)};

// The shaft needs at least this long for one position, in microseconds, at its fastest turn.
const uint32_t STEP_US = ${stepUs};
// After this long without a read, in milliseconds, it can stand anywhere.
const uint32_t HALF_TURN_MS = ${halfTurnMs};

// A word holds one bit a channel, channel 0 the highest.
${decode}`;
}
