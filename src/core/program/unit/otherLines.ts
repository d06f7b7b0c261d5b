import type { ProgramFacts } from '../facts.ts';
import { afterLine, beforeLine } from './line.ts';
import { sectionHeading } from './text.ts';

const addTextText = `void addText(const char *text) {
  for (; pgm_read_byte((const uint8_t *)text) != 0; text++) addChar(pgm_read_byte((const uint8_t *)text));
}`;

/** Text in program memory, as the language wants it: a table of its own for each piece. */
class Pieces {
  readonly #texts: string[] = [];

  /** The call that adds this text to the line. */
  add(text: string): string {
    const at = this.#texts.includes(text) ? this.#texts.indexOf(text) : this.#texts.push(text) - 1;
    return `addText(PIECE_${at});`;
  }

  get declarations(): string {
    return this.#texts
      .map((text, i) => `const char PIECE_${i}[] PROGMEM = ${JSON.stringify(text)};`)
      .join('\n');
  }
}

const jsonNumber = `// A number of hundredths or thousandths with a point before its last places.
void addDecimal(uint32_t number, uint8_t places) {
  uint32_t one = 1;
  for (uint8_t i = 0; i < places; i++) one *= 10;
  addNumber(number / one);
  addChar('.');
  addNumber(number % one, places);
}`;

/** The same fields as one JSON object. */
export function jsonLineText(facts: ProgramFacts): string {
  const pieces = new Pieces();
  const orNull = (isRead: string, number: string, places: number): string =>
    `if (${isRead}) addDecimal(${number}, ${places});\n  else ${pieces.add('null')}`;
  const average = facts.averages
    ? [
        pieces.add(',"average":{"headingDeg":'),
        orNull('agreement > 0', 'mean', 2),
        pieces.add(',"agreement":'),
        orNull('vectors > 0', 'agreement', 3),
        `addChar('}');`,
      ]
    : [pieces.add(',"average":null')];
  const cups = facts.cups
    ? [
        pieces.add(',"cups":{"pulses":'),
        'addNumber(pulses);',
        pieces.add(',"edges":'),
        'addNumber(edges);',
        pieces.add(',"gustPulses":'),
        facts.averages ? 'addNumber(gust);' : pieces.add('null'),
        `addChar('}');`,
      ]
    : [pieces.add(',"cups":null')];
  const body = [
    pieces.add('{"vw":1,"lineNumber":'),
    'addNumber(lineNumber);',
    pieces.add(',"sinceStartMs":'),
    'addNumber(nowMs);',
    pieces.add(',"counts":['),
    `for (uint8_t i = 0; i < COUNTS; i++) {
    if (i > 0) addChar(',');
    addNumber(counts[i]);
  }`,
    pieces.add('],"word":"'),
    'addWord(wordNow);',
    pieces.add('","headingDeg":'),
    orNull('position != NO_POSITION', 'heading', 2),
    pieces.add(',"halfWidthDeg":'),
    orNull('position != NO_POSITION', 'headingHalfWidth', 2),
    pieces.add(',"flags":"'),
    'addFlags();',
    `addChar('"');`,
    ...average,
    ...cups,
    'const uint16_t check = lineCheck;  // of everything so far',
    pieces.add(',"check":"'),
    `addHex(check, 4, 'A');`,
    pieces.add('"}\n'),
  ];
  const parameters = facts.cups ? ', uint32_t pulses, uint32_t edges' : '';
  return `${sectionHeading('JSON line')}

${pieces.declarations}

${addTextText}

${jsonNumber}

void writeJsonLine(uint32_t nowMs${parameters}) {
${beforeLine(facts)}  ${body.join('\n  ')}
${afterLine(facts)}
}`;
}

/** Wind speed since the sentence before, by the maker's own calibration. */
function speedText(facts: ProgramFacts): string {
  const { cups } = facts;
  if (!cups || cups.runPerPulseMm === null) return '';
  const most = Math.floor(4_000_000_000 / (cups.runPerPulseMm * 100));
  return `uint32_t lastPulses = 0;
uint32_t lastSpeedMs = 0;

// Wind speed since the sentence before, in centimetres a second: ${cups.runPerPulseMm} mm of wind a pulse.
uint32_t speedOf(uint32_t pulses, uint32_t nowMs) {
  uint32_t many = pulses - lastPulses;
  uint32_t elapsedMs = nowMs - lastSpeedMs;
  lastPulses = pulses;
  lastSpeedMs = nowMs;
  if (many == 0 || elapsedMs == 0) return 0;
  while (many > ${most}) {  // so that the product fits 32 bits
    many /= 2;
    elapsedMs /= 2;
  }
  const uint32_t speed = (many * ${cups.runPerPulseMm * 100} + elapsedMs / 2) / elapsedMs + ${cups.startCmPerS};
  return speed > 99990 ? 99990 : speed;
}

`;
}

/** A wind sentence of the open standard. */
export function sentenceText(facts: ProgramFacts): string {
  const isMwd = facts.format === 'nmea-mwd';
  const hasSpeed = facts.cups !== null && facts.cups.runPerPulseMm !== null;
  const pieces = new Pieces();
  const tenths = (value: string): string => `addTenths(${value});`;
  const speed = hasSpeed ? tenths('(speed + 5) / 10') : '';
  const knots = hasSpeed ? tenths('(speed * 19438 + 50000) / 100000') : '';
  const body = [
    pieces.add(isMwd ? 'WIMWD,' : 'WIMWV,'),
    'if (position != NO_POSITION) addTenths((heading + 5) / 10 % 3600);',
    ...(isMwd
      ? [pieces.add(',T,,M,'), knots, pieces.add(',N,'), speed, pieces.add(',M')]
      : [pieces.add(',R,'), speed, pieces.add(',M,'), `addChar(position != NO_POSITION ? 'A' : 'V');`]),
  ].filter((row) => row !== '');
  const parameters = facts.cups ? ', uint32_t pulses' : '';
  const unused = facts.cups && !hasSpeed ? '  (void)pulses;\n' : '';
  return `${sectionHeading('Sentence')}

${pieces.declarations}

${addTextText}

void addTenths(uint32_t tenths) {
  addNumber(tenths / 10);
  addChar('.');
  addChar('0' + tenths % 10);
}

${speedText(facts)}void writeSentence(uint32_t nowMs${parameters}) {
${beforeLine(facts)}${hasSpeed ? '  const uint32_t speed = speedOf(pulses, nowMs);\n' : '  (void)nowMs;\n'}${unused}  addChar('$');
  ${body.join('\n  ')}
  uint8_t check = 0;
  for (uint16_t i = 1; i < lineLength; i++) check ^= line[i];
  addChar('*');
  addHex(check, 2, 'A');
  addChar('\\r');
  addChar('\\n');
${afterLine(facts)}
}`;
}
