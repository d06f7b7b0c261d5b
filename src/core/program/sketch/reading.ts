import type { ProgramFacts } from '../facts.ts';
import { sectionHeading } from '../unit/text.ts';

const converterText = `// Starts the converter on an input, against the supply that also feeds the sensors. It works by itself
// for 104 us from here, which is time to judge the channel before.
void startMeasuring(uint8_t input) {
  ADMUX = _BV(REFS0) | input;
  ADCSRA |= _BV(ADSC);
}

uint16_t finishMeasuring() {
  while (ADCSRA & _BV(ADSC)) {
  }
  return ADC;
}`;

/** Before the read that counts: nothing, or one that is thrown away. */
const throwAway = `
    finishMeasuring();  // thrown away: the sensor is too weak to charge the converter at once
    startMeasuring(CHANNEL_INPUT[channel]);`;

/** Steady lights on the board's own converter: each channel is judged while the next one is measured. */
function directText({ readTwice }: ProgramFacts): string {
  const twice = readTwice ? throwAway : '';
  return `${converterText}

void beginReading() {
}

void readCounts() {
  for (uint8_t channel = 0; channel < CHANNELS; channel++) {
    startMeasuring(CHANNEL_INPUT[channel]);${twice}
    counts[channel] = finishMeasuring();
  }
}

void readChannels() {
  uint16_t high = highNow;
  uint16_t bit = 1 << (CHANNELS - 1);
  startMeasuring(CHANNEL_INPUT[0]);
  for (uint8_t channel = 0; channel < CHANNELS; channel++, bit >>= 1) {${twice}
    const uint16_t now = finishMeasuring();
    if (channel + 1 < CHANNELS) startMeasuring(CHANNEL_INPUT[channel + 1]);
    counts[channel] = now;
    if (now >= settings.high[channel]) high |= bit;
    else if (now <= settings.low[channel]) high &= ~bit;
  }
  highNow = high;
  wordNow = high ^ HIGH_IS_ZERO;
}`;
}

const multiplexerText = `${converterText}

void beginInput() {
  for (uint8_t line = 0; line < 4; line++) pinMode(SELECT_PIN[line], OUTPUT);
}

// Behind the multiplexer the wire still holds the voltage of the channel before: the first read only
// charges it and is thrown away.
uint16_t readChannel(uint8_t channel) {
  for (uint8_t line = 0; line < 4; line++) digitalWrite(SELECT_PIN[line], (CHANNEL_INPUT[channel] >> line) & 1);
  startMeasuring(COMMON_INPUT);
  finishMeasuring();
  startMeasuring(COMMON_INPUT);
  return finishMeasuring();
}

inline void beforeChannels() {
}`;

const digitalText = `void beginInput() {
  for (uint8_t channel = 0; channel < CHANNELS; channel++) pinMode(CHANNEL_PIN[channel], INPUT);
}

uint16_t readChannel(uint8_t channel) {
  return digitalRead(CHANNEL_PIN[channel]);
}

inline void beforeChannels() {
}`;

const registerText = `uint16_t shifted;  // bit i is what came out i-th

void beginInput() {
  pinMode(LOAD_PIN, OUTPUT);
  pinMode(CLOCK_PIN, OUTPUT);
  pinMode(DATA_PIN, INPUT);
  digitalWrite(LOAD_PIN, HIGH);
  digitalWrite(CLOCK_PIN, LOW);
}

// All inputs are taken over at the same moment, then come out one by one.
void beforeChannels() {
  digitalWrite(LOAD_PIN, LOW);
  digitalWrite(LOAD_PIN, HIGH);
  shifted = 0;
  for (uint8_t i = 0; i < REGISTER_INPUTS; i++) {
    if (digitalRead(DATA_PIN)) shifted |= 1 << i;
    digitalWrite(CLOCK_PIN, HIGH);
    digitalWrite(CLOCK_PIN, LOW);
  }
}

uint16_t readChannel(uint8_t channel) {
  return (shifted >> CHANNEL_INPUT[channel]) & 1;
}`;

const directChannelText = `${converterText}

void beginInput() {
}

uint16_t readChannel(uint8_t channel) {
  startMeasuring(CHANNEL_INPUT[channel]);
  finishMeasuring();  // thrown away: the input still holds the voltage of the channel before
  startMeasuring(CHANNEL_INPUT[channel]);
  return finishMeasuring();
}

inline void beforeChannels() {
}`;

/** One read of the wire gives the levels of all gates: the word whose counts are nearest. */
function ladderText({ readTwice }: ProgramFacts): string {
  const twice = readTwice
    ? '\n  finishMeasuring();  // thrown away: the ladder is too weak to charge the converter at once\n  startMeasuring(COMMON_INPUT);'
    : '';
  return `${converterText}

uint8_t legs;  // bit i is the level of leg i

void beginInput() {
}

void beforeChannels() {
  startMeasuring(COMMON_INPUT);${twice}
  const uint16_t now = finishMeasuring();
  uint16_t low = 0;
  uint16_t high = LADDER_WORDS - 1;
  while (low < high) {
    const uint16_t middle = (low + high) / 2;
    if (now >= pgm_read_word(&LADDER_FROM[middle])) low = middle + 1;
    else high = middle;
  }
  legs = pgm_read_byte(&LADDER_WORD[low]);
}

uint16_t readChannel(uint8_t channel) {
  return (legs >> CHANNEL_INPUT[channel]) & 1;
}`;
}

const inputTexts = {
  direct: directChannelText,
  digital: digitalText,
  multiplexer: multiplexerText,
  'shift-register': registerText,
} as const;

const steadyText = `void beginReading() {
  beginInput();
}

void readCounts() {
  beforeChannels();
  for (uint8_t channel = 0; channel < CHANNELS; channel++) counts[channel] = readChannel(channel);
}`;

/** Lights only while reading: what the sensors see without them is taken off. */
function pulsedText({ lightRaises: isRise }: ProgramFacts): string {
  const change = isRise ? 'lit > ambient ? lit - ambient : 0' : 'ambient > lit ? ambient - lit : 0';
  const room = isRise ? 'COUNTS_MOST - ambient' : 'ambient';
  return `uint16_t ambients[CHANNELS];

void beginReading() {
  beginInput();
  pinMode(LIGHTS_PIN, OUTPUT);
  digitalWrite(LIGHTS_PIN, LOW);
}

// Once in the dark and once in the light of the lights: daylight is in both, and in their difference no more.
void readCounts() {
  delayMicroseconds(SETTLE_US);
  beforeChannels();
  for (uint8_t channel = 0; channel < CHANNELS; channel++) ambients[channel] = readChannel(channel);
  digitalWrite(LIGHTS_PIN, HIGH);
  delayMicroseconds(SETTLE_US);
  beforeChannels();
  drowned = false;
  for (uint8_t channel = 0; channel < CHANNELS; channel++) {
    const uint16_t ambient = ambients[channel];
    const uint16_t lit = readChannel(channel);
    counts[channel] = ${change};
    if (${room} < settings.high[channel]) drowned = true;
  }
  digitalWrite(LIGHTS_PIN, LOW);
}`;
}

/** Red, green and blue in turn: what the sensors see without any of them is taken off each. */
function coloursText({ lightRaises: isRise }: ProgramFacts): string {
  const change = isRise ? 'lit > ambient ? lit - ambient : 0' : 'ambient > lit ? ambient - lit : 0';
  const room = isRise ? '1023 - ambient' : 'ambient';
  return `uint16_t ambients[CHANNELS];

void beginReading() {
  beginInput();
  for (uint8_t colour = 0; colour < 3; colour++) pinMode(LIGHTS_PIN[colour], OUTPUT);
}

// Once without light and once in each colour: daylight is in all, and in their differences no more.
void readCounts() {
  delayMicroseconds(SETTLE_US);
  beforeChannels();
  for (uint8_t channel = 0; channel < CHANNELS; channel++) ambients[channel] = readChannel(channel);
  drowned = false;
  for (uint8_t colour = 0; colour < 3; colour++) {
    digitalWrite(LIGHTS_PIN[colour], HIGH);
    delayMicroseconds(SETTLE_US);
    for (uint8_t channel = 0; channel < CHANNELS; channel++) {
      const uint16_t ambient = ambients[channel];
      const uint16_t lit = readChannel(channel);
      counts[3 * channel + colour] = ${change};
      if (${room} < settings.high[channel]) drowned = true;
    }
    digitalWrite(LIGHTS_PIN[colour], LOW);
  }
}`;
}

/** Filling the counts, by how the lights are lit. */
function lightsText(facts: ProgramFacts): string {
  if (facts.settleUs === null) return steadyText;
  return facts.marks?.kind === 'colours' ? coloursText(facts) : pulsedText(facts);
}

/** Voltages or levels to counts, counts to a word. */
export function readingText(facts: ProgramFacts): string {
  const { input } = facts.wiring;
  const heading = sectionHeading('Reading');
  if (input === 'direct' && facts.settleUs === null && facts.marks === null)
    return `${heading}\n\n${directText(facts)}`;
  return `${heading}

${input === 'ladder' ? ladderText(facts) : inputTexts[input]}

${lightsText(facts)}

void readChannels() {
  readCounts();
  judgeCounts();
}`;
}
