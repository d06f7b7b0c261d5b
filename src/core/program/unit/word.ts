import type { ProgramFacts } from '../facts.ts';
import { SHARE_PARTS, SQUARE_PARTS, type MarkFacts } from '../markFacts.ts';
import { sectionHeading } from './text.ts';

/** One bit a channel, channel 0 the highest, set where high counts mean level 0 of the code. */
function highIsZero({ channels }: ProgramFacts): number {
  return channels.reduce((mask, { levelWhenHigh }) => mask * 2 + (levelWhenHigh === 0 ? 1 : 0), 0);
}

/** Windows and lands: one bit a channel. */
function twoLevelText(facts: ProgramFacts): string {
  return `uint16_t highNow;  // one bit a channel, channel 0 the highest: 1 while its counts are high

// Channels on which high counts are level 0 of the code.
const uint16_t HIGH_IS_ZERO = ${highIsZero(facts)};

void judgeCounts() {
  uint16_t bit = 1 << (CHANNELS - 1);
  for (uint8_t channel = 0; channel < CHANNELS; channel++, bit >>= 1) {
    if (counts[channel] >= settings.high[channel]) highNow |= bit;
    else if (counts[channel] <= settings.low[channel]) highNow &= ~bit;
  }
  wordNow = highNow ^ HIGH_IS_ZERO;
}

// At the start there is no "as it was" yet: the nearer threshold decides.
void judgeFirstCounts() {
  highNow = 0;
  for (uint8_t channel = 0; channel < CHANNELS; channel++) {
    const uint16_t middle = (settings.low[channel] + settings.high[channel] + 1) / 2;
    highNow = (highNow << 1) | (counts[channel] >= middle ? 1 : 0);
  }
  wordNow = highNow ^ HIGH_IS_ZERO;
}`;
}

const greysText = ({ isRising }: Extract<MarkFacts, { kind: 'greys' }>): string => `
// Level by the two pairs of a channel; between the thresholds of a pair it stays as it was.
uint8_t judgeMark(uint8_t channel, uint8_t before) {
  const uint16_t now = counts[channel];
  uint8_t level = 0;
  for (uint8_t pair = 0; pair < 2; pair++) {
    const uint8_t at = 2 * channel + pair;
    const bool wasAbove = before > pair;
    const bool isAbove = ${
      isRising
        ? 'wasAbove ? now > settings.low[at] : now >= settings.high[at]'
        : 'wasAbove ? now < settings.high[at] : now <= settings.low[at]'
    };
    if (isAbove) level = pair + 1;
  }
  return level;
}`;

const coloursText = ({ centroids, rejectSquare }: Extract<MarkFacts, { kind: 'colours' }>): string => `
// Shares of red and green in all the light of each level, in parts of ${SHARE_PARTS}.
const int16_t RED_SHARE[LEVELS] = {${centroids.map(([r]) => r).join(', ')}};
const int16_t GREEN_SHARE[LEVELS] = {${centroids.map(([, g]) => g).join(', ')}};

// The nearest colour, when it is clearly nearer than the next one; else the channel stays as it was.
uint8_t judgeMark(uint8_t channel, uint8_t before) {
  const uint16_t *rgb = &counts[3 * channel];
  const uint32_t sum = (uint32_t)rgb[0] + rgb[1] + rgb[2];
  if (sum < settings.high[channel]) return before;
  const int16_t red = (uint32_t)rgb[0] * ${SHARE_PARTS} / sum;
  const int16_t green = (uint32_t)rgb[1] * ${SHARE_PARTS} / sum;
  uint32_t nearest = 0xFFFFFFFF;
  uint32_t next = 0xFFFFFFFF;
  uint8_t found = before;
  for (uint8_t level = 0; level < LEVELS; level++) {
    const int32_t r = red - RED_SHARE[level];
    const int32_t g = green - GREEN_SHARE[level];
    const uint32_t square = r * r + g * g;
    if (square < nearest) {
      next = nearest;
      nearest = square;
      found = level;
    } else if (square < next) {
      next = square;
    }
  }
  return nearest * ${SQUARE_PARTS} <= next * ${rejectSquare} ? found : before;
}`;

/** Three marks: two bits a channel. */
function threeLevelText(marks: MarkFacts): string {
  return `${(marks.kind === 'greys' ? greysText(marks) : coloursText(marks)).trimStart()}

void judgeCounts() {
  uint16_t word = 0;
  for (uint8_t channel = 0; channel < CHANNELS; channel++) {
    word = (word << LEVEL_BITS) | judgeMark(channel, levelIn(wordNow, CHANNELS - 1 - channel));
  }
  wordNow = word;
}

// At the start there is no "as it was" yet: what is rejected counts as level 0 until it is seen.
void judgeFirstCounts() {
  wordNow = 0;
  judgeCounts();
}`;
}

/** Counts to a word. */
export function wordText(facts: ProgramFacts): string {
  return `${sectionHeading('Word')}

const uint8_t COUNTS = ${facts.countsEach === 3 ? '3 * CHANNELS;  // red, green and blue of each channel' : 'CHANNELS;'}
uint16_t counts[COUNTS];
uint16_t wordNow;  // levels of the code, LEVEL_BITS bits a channel, channel 0 the highest

// Level of a channel in a word, counted from the last channel.
inline uint8_t levelIn(uint16_t word, uint8_t fromLast) {
  return (word >> (LEVEL_BITS * fromLast)) & ((1 << LEVEL_BITS) - 1);
}

${facts.marks ? threeLevelText(facts.marks) : twoLevelText(facts)}`;
}
