import type { ProgramFacts } from '../facts.ts';
import { positionType } from './disc.ts';
import { sectionHeading } from './text.ts';

/** One bit a channel, channel 0 the highest, set where high counts mean level 0 of the code. */
function highIsZero({ channels }: ProgramFacts): number {
  return channels.reduce((mask, { levelWhenHigh }) => mask * 2 + (levelWhenHigh === 0 ? 1 : 0), 0);
}

/** Counts to a word. */
export function wordText(facts: ProgramFacts): string {
  return `${sectionHeading('Word')}

uint16_t counts[CHANNELS];
uint16_t highNow;  // one bit a channel, channel 0 the highest: 1 while its counts are high
uint16_t wordNow;  // the same as levels of the code

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

/** Word to position, and what is suspicious about it. */
export function judgingText(facts: ProgramFacts): string {
  const { type } = positionType(facts.positions);
  return `${sectionHeading('Judging')}

${type} position = NO_POSITION;
${type} lastPosition = NO_POSITION;  // the last one that could be read
uint32_t lastPositionMs;

// Fastest turn of the shaft, in hundredths of a degree a second.
const uint32_t TURN = ${facts.turnHundredthsPerS};
// After this long without a read, in milliseconds, it can stand anywhere.
const uint32_t HALF_TURN_MS = ${facts.halfTurnMs};

// Noticed since the last line was written.
bool jumped = false;
bool illegalBefore = false;

// Noticed since the start.
bool darkSeen = false;   // some channel has been dark
bool lightSeen = false;  // some channel has been lit
const uint16_t ALL_LIGHT = ${facts.windowLevel === 1 ? 'ALL_CHANNELS' : '0'};

// How often each channel alone explains a word that does not fit, since it last changed.
uint8_t doubts[CHANNELS];
const uint8_t DOUBTS_MOST = 3;
uint16_t stillChannels = 0;   // did not change in a recorded turn in which the others did
uint16_t turnedChannels = 0;  // changed since the recorded turn began
uint16_t lastWord;

uint16_t stuckChannels() {
  uint16_t stuck = stillChannels;
  for (uint8_t channel = 0; channel < CHANNELS; channel++) {
    if (doubts[channel] >= DOUBTS_MOST) stuck |= 1 << (CHANNELS - 1 - channel);
  }
  return stuck;
}

// More than one position since the last read is only possible when that was long enough ago.
bool canReach(${type} to, uint32_t nowMs) {
  const uint32_t elapsedMs = nowMs - lastPositionMs;
  return elapsedMs > HALF_TURN_MS || gapBetween(to, lastPosition) <= (elapsedMs + 1) * TURN / 1000;
}

// Which channel, had it changed, would have made a neighbour of the last position?
void doubtChannels() {
  uint16_t bit = 1 << (CHANNELS - 1);
  for (uint8_t channel = 0; channel < CHANNELS; channel++, bit >>= 1) {
    const ${type} instead = positionOf(wordNow ^ bit);
    if (instead == NO_POSITION || gapBetween(instead, lastPosition) > 0) continue;
    if (doubts[channel] < 255) doubts[channel]++;
  }
}

void noticeChange() {
  const uint16_t changed = wordNow ^ lastWord;
  lastWord = wordNow;
  turnedChannels |= changed;
  stillChannels &= ~changed;
  if (wordNow != ALL_LIGHT) darkSeen = true;
  if (wordNow != (ALL_LIGHT ^ ALL_CHANNELS)) lightSeen = true;
  uint16_t bit = 1 << (CHANNELS - 1);
  for (uint8_t channel = 0; channel < CHANNELS; channel++, bit >>= 1) {
    if (changed & bit) doubts[channel] = 0;
  }
}

void beginJudging() {
  lastWord = ~wordNow & ALL_CHANNELS;  // so that the first word is noticed
}

// A word that the disc does not have gives no position and no guess. A jump is reported, not hidden.
void judgeWord(uint32_t nowMs) {
  const bool isNew = wordNow != lastWord;
  if (isNew) noticeChange();
  position = positionOf(wordNow);
  if (position == NO_POSITION) {
    if (isNew && lastPosition != NO_POSITION) doubtChannels();
    if (nowMs - lastPositionMs > HALF_TURN_MS) lastPosition = NO_POSITION;
    return;
  }
  if (position != lastPosition && lastPosition != NO_POSITION && !canReach(position, nowMs)) {
    jumped = true;
    doubtChannels();
  }
  lastPosition = position;
  lastPositionMs = nowMs;
}`;
}
