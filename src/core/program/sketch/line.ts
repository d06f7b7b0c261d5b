import { LINE_TAG, lineFields, lineFlags, NONE, NOT_READ, type LineField } from '../../record/index.ts';
import type { ProgramFacts } from '../facts.ts';
import { sectionHeading } from './text.ts';

const flagsText = `if (jumped) addChar('${lineFlags.impossibleJump}');
  if (illegalBefore) addChar('${lineFlags.illegalBefore}');
  if (position == NO_POSITION) addChar('${lineFlags.illegalWord}');
  if (!jumped && !illegalBefore && position != NO_POSITION) addChar('${NONE}');`;

/** How each field is written, in the program's language. */
function fieldTexts({ cups }: ProgramFacts): Record<LineField, string> {
  return {
    lineNumber: 'addNumber(lineNumber++);',
    sinceStartMs: 'addNumber(nowMs);',
    counts: `for (uint8_t channel = 0; channel < CHANNELS; channel++) {
    if (channel > 0) addChar(',');
    addNumber(counts[channel]);
  }`,
    word: `for (uint8_t channel = CHANNELS; channel-- > 0;) addChar((wordNow >> channel) & 1 ? '1' : '0');`,
    heading: `if (position == NO_POSITION) addChar('${NOT_READ}');
  else addNumber(pgm_read_word(&HEADING[position]));`,
    flags: flagsText,
    pulses: cups ? 'addNumber(pulses);' : `addChar('${NONE}');`,
    edges: cups ? 'addNumber(edges);' : `addChar('${NONE}');`,
  };
}

const copyCups = `  noInterrupts();  // both counters from the same moment
  const uint32_t pulses = cupPulses;
  const uint32_t edges = cupEdges;
  interrupts();

`;

/** The line and its check value, written into memory and sent as the serial port has room. */
export function lineText(facts: ProgramFacts): string {
  const fields = fieldTexts(facts);
  const body = lineFields.map((field) => `  addChar(' ');\n  ${fields[field]}`).join('\n');
  return `${sectionHeading('Line')}

const uint32_t LINE_INTERVAL_MS = ${facts.lineIntervalMs};

char line[${facts.lineChars}];
uint16_t lineLength = 0;
uint16_t lineSent = 0;
uint16_t lineCheck;
uint32_t lineNumber = 0;
uint32_t lastLineMs = 0;

void addChar(char character) {
  line[lineLength++] = character;
  lineCheck ^= (uint16_t)((uint8_t)character) << 8;
  for (uint8_t bit = 0; bit < 8; bit++) {
    lineCheck = (lineCheck & 0x8000) ? (lineCheck << 1) ^ 0x1021 : lineCheck << 1;
  }
}

void addNumber(uint32_t number) {
  char digits[11];
  ultoa(number, digits, 10);
  for (const char *digit = digits; *digit; digit++) addChar(*digit);
}

void addCheck() {
  const uint16_t check = lineCheck;  // of everything so far
  addChar(' ');
  for (int8_t shift = 12; shift >= 0; shift -= 4) addChar("0123456789ABCDEF"[(check >> shift) & 15]);
}

void writeLine(uint32_t nowMs) {
${facts.cups ? copyCups : ''}  lineLength = 0;
  lineSent = 0;
  lineCheck = 0xFFFF;
${[...LINE_TAG].map((character) => `  addChar('${character}');`).join('\n')}
${body}
  addCheck();
  addChar('\\n');
  jumped = false;
  illegalBefore = false;
}

// Hands over as much as fits and does not wait, so that reading goes on while the line goes out.
void sendLine() {
  while (lineSent < lineLength && Serial.availableForWrite() > 0) Serial.write(line[lineSent++]);
}`;
}
