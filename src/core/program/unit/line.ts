import {
  LINE_TAG,
  lineFields,
  lineFlags,
  NONE,
  NOT_READ,
  type LineField,
  type LineFlag,
} from '../../record/index.ts';
import type { ProgramFacts } from '../facts.ts';
import { interpolates } from './heading.ts';
import { sectionHeading } from './text.ts';

/** What each flag means in the program's language. */
const flagTests: Record<LineFlag, string> = {
  impossibleJump: 'jumped',
  illegalBefore: 'illegalBefore',
  illegalWord: 'position == NO_POSITION',
  interpolated: 'interpolated',
  stuckChannel: 'stuckChannels() != 0',
  allDark: '!lightSeen',
  allLight: '!darkSeen',
  daylight: 'drowned',
  turnRecording: 'recordingTurn',
};

/** Flags that a program can set at all. */
function flagsOf(facts: ProgramFacts): readonly LineFlag[] {
  return (Object.keys(lineFlags) as LineFlag[]).filter(
    (flag) =>
      (flag !== 'interpolated' || interpolates(facts)) &&
      (flag !== 'daylight' || facts.settleUs !== null) &&
      (facts.levelCount === 2 || (flag !== 'allDark' && flag !== 'allLight')),
  );
}

/** Letters of the flags that a program can set. */
export function unitFlags(facts: ProgramFacts): readonly string[] {
  return flagsOf(facts).map((flag) => lineFlags[flag]);
}

/** How each field of the text line is written, in the program's language. */
function fieldTexts({ cups, averages }: ProgramFacts): Record<LineField, string> {
  const none = `addChar('${NONE}');`;
  const orUnread = (isRead: string, number: string): string => `if (${isRead}) addNumber(${number});
  else addChar('${NOT_READ}');`;
  return {
    lineNumber: 'addNumber(lineNumber);',
    sinceStartMs: 'addNumber(nowMs);',
    counts: `for (uint8_t i = 0; i < COUNTS; i++) {
    if (i > 0) addChar(',');
    addNumber(counts[i]);
  }`,
    word: 'addWord(wordNow);',
    heading: orUnread('position != NO_POSITION', 'heading'),
    halfWidth: orUnread('position != NO_POSITION', 'headingHalfWidth'),
    flags: `if (!addFlags()) ${none}`,
    mean: averages ? orUnread('agreement > 0', 'mean') : none,
    agreement: averages ? orUnread('vectors > 0', 'agreement') : none,
    pulses: cups ? 'addNumber(pulses);' : none,
    edges: cups ? 'addNumber(edges);' : none,
    gust: cups && averages ? 'addNumber(gust);' : none,
  };
}

/** Characters, numbers, words and flags into the line, each into the check value too. */
export function writingText(facts: ProgramFacts): string {
  const flags = flagsOf(facts).map(
    (flag) => `  if (${flagTests[flag]}) {
    addChar('${lineFlags[flag]}');
    any = true;
  }`,
  );
  return `${sectionHeading('Writing')}

char line[${facts.lineChars}];
uint16_t lineLength = 0;
uint16_t lineSent = 0;
uint16_t lineCheck;
uint32_t lineNumber = 0;
bool recordingTurn = false;
${interpolates(facts) ? 'bool interpolated = false;\n' : ''}${facts.settleUs === null ? '' : 'bool drowned = false;  // daylight leaves a channel no room for its own light\n'}
void addChar(char character) {
  line[lineLength++] = character;
  lineCheck = checkOf(lineCheck, character);
}

const uint32_t POWER[10] PROGMEM = {
  1000000000, 100000000, 10000000, 1000000, 100000, 10000, 1000, 100, 10, 1
};

// Takes powers of ten away as often as they go; no division, which takes long on a small chip.
void addNumber(uint32_t number, uint8_t digits = 1) {
  bool begun = false;
  for (uint8_t i = 0; i < 10; i++) {
    const uint32_t power = pgm_read_dword(&POWER[i]);
    char digit = '0';
    for (; number >= power; number -= power) digit++;
    if (digit == '0' && !begun && 10 - i > digits) continue;
    addChar(digit);
    begun = true;
  }
}

void addWord(uint16_t word) {
  for (uint8_t channel = CHANNELS; channel-- > 0;) addChar('0' + levelIn(word, channel));
}

bool addFlags() {
  bool any = false;
${flags.join('\n')}
  return any;
}

void addHex(uint32_t number, uint8_t digits, char ten) {
  while (digits-- > 0) {
    const uint8_t digit = (number >> (4 * digits)) & 15;
    addChar(digit < 10 ? '0' + digit : ten + digit - 10);
  }
}

void beginLine() {
  lineLength = 0;
  lineSent = 0;
  lineCheck = 0xFFFF;
}

void endLine() {
  const uint16_t check = lineCheck;  // of everything so far
  addChar(' ');
  addHex(check, 4, 'A');
  addChar('\\n');
}`;
}

/** What every kind of line needs first: the heading, and the mean where there is one. */
export function beforeLine(facts: ProgramFacts): string {
  const finer = interpolates(facts)
    ? '  interpolated = position != NO_POSITION && findFinerHeading();\n'
    : '';
  return `  findHeading();\n${finer}${facts.averages ? '  findMean();\n' : ''}  beginLine();\n`;
}

/** What every kind of line leaves behind. */
export function afterLine(facts: ProgramFacts): string {
  const mean = facts.averages ? `\n  forgetMean();${facts.cups ? '\n  gust = 0;' : ''}` : '';
  return `  lineNumber++;\n  jumped = false;\n  illegalBefore = false;${mean}`;
}

/** The text line with its check value. */
export function lineText(facts: ProgramFacts): string {
  const fields = fieldTexts(facts);
  const body = lineFields.map((field) => `  addChar(' ');\n  ${fields[field]}`).join('\n');
  const cups = facts.cups ? ', uint32_t pulses, uint32_t edges' : '';
  return `${sectionHeading('Line')}

void writeTextLine(uint32_t nowMs${cups}) {
${beforeLine(facts)}${[...LINE_TAG].map((character) => `  addChar('${character}');`).join('\n')}
${body}
  endLine();
${afterLine(facts)}
}`;
}
