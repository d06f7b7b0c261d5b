import { crc16 } from '../../record/index.ts';
import type { ProgramFacts } from '../facts.ts';
import { braced, sectionHeading } from './text.ts';

/** Check value of what a maker may change by command, so that a new program does not take old settings. */
export function programCheck({ channels, northHundredths }: ProgramFacts): number {
  const rows = channels.map(({ low, high, levelWhenHigh }) => `${low} ${high} ${levelWhenHigh}`);
  return crc16([...rows, northHundredths].join('\n'));
}

/** Every pair of thresholds a maker may change: one a channel, or two between three greys. */
export function thresholdsOf({ channels, marks }: ProgramFacts): readonly { low: number; high: number }[] {
  return marks?.kind === 'greys' ? channels.flatMap(() => [...marks.pairs]) : channels;
}

/** What the pairs mean, by how marks are told apart. */
function pairsNote({ marks, countsMost }: ProgramFacts): string {
  if (marks?.kind === 'colours') {
    return `// Red, green and blue of a channel together must reach its upper number before its colour is judged.`;
  }
  const two =
    marks?.kind === 'greys' ? ' Two pairs a channel: between level 0 and 1, and between 1 and 2.' : '';
  return `// Thresholds of each channel in counts, 0 to ${countsMost}. A channel turns high at its upper threshold and
// low at its lower one. Between them it stays as it was, so that noise on an edge of the disc does
// not make it chatter.${two}`;
}

/** Thresholds and north: those of the program, until the maker sets others. */
export function settingsText(facts: ProgramFacts): string {
  const { channels, countsMost, countsEach, northHundredths, hash } = facts;
  const pairs = thresholdsOf(facts);
  return `${sectionHeading('Settings')}

const uint8_t CHANNELS = ${channels.length};
const uint16_t COUNTS_MOST = ${countsEach * countsMost};

${pairsNote(facts)}
const uint8_t PAIRS = ${pairs.length};
const uint16_t LOW_COUNTS[PAIRS] PROGMEM = ${braced(pairs.map(({ low }) => low))};
const uint16_t HIGH_COUNTS[PAIRS] PROGMEM = ${braced(pairs.map(({ high }) => high))};

// Added to every heading of the table, in hundredths of a degree.
const uint16_t NORTH = ${northHundredths};

// Short name of the table below, as on the certificate, and check value of thresholds and north above:
// settings that were kept by another program do not fit.
const uint32_t TABLE = 0x${hash}UL;
const uint16_t PROGRAM = ${programCheck(facts)};

struct Settings {
  uint32_t table;
  uint16_t program;
  uint16_t turn;  // rises by one each time settings are kept: the later copy is the right one
  uint16_t north;
  uint16_t low[PAIRS];
  uint16_t high[PAIRS];
  uint16_t check;
};

Settings settings;
bool settingsKept = false;

void takeProgramSettings() {
  settings.table = TABLE;
  settings.program = PROGRAM;
  settings.north = NORTH;
  for (uint8_t pair = 0; pair < PAIRS; pair++) {
    settings.low[pair] = pgm_read_word(&LOW_COUNTS[pair]);
    settings.high[pair] = pgm_read_word(&HIGH_COUNTS[pair]);
  }
  settingsKept = false;
}

// Cyclic redundancy check of 16 bits, one more byte.
uint16_t checkOf(uint16_t check, uint8_t byte) {
  check ^= (uint16_t)byte << 8;
  for (uint8_t bit = 0; bit < 8; bit++) check = (check & 0x8000) ? (check << 1) ^ 0x1021 : check << 1;
  return check;
}`;
}
