import type { ProgramFacts } from '../facts.ts';
import { positionType } from './disc.ts';
import { sectionHeading } from './text.ts';

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
const uint16_t ALL_LIGHT = ${facts.windowLevel === 1 ? 'ALL_BITS' : '0'};

const uint16_t LEVEL_MASK = (1 << LEVEL_BITS) - 1;

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
  for (uint8_t channel = 0; channel < CHANNELS; channel++) {
    const uint8_t place = LEVEL_BITS * (CHANNELS - 1 - channel);
    for (uint8_t other = 1; other < LEVELS; other++) {
      const uint8_t level = (((wordNow >> place) & LEVEL_MASK) + other) % LEVELS;
      const ${type} instead = positionOf((wordNow & ~(LEVEL_MASK << place)) | (level << place));
      if (instead == NO_POSITION || gapBetween(instead, lastPosition) > 0) continue;
      if (doubts[channel] < 255) doubts[channel]++;
      break;
    }
  }
}

void noticeChange() {
  const uint16_t changed = wordNow ^ lastWord;
  lastWord = wordNow;
  if (wordNow != ALL_LIGHT) darkSeen = true;
  if (wordNow != (ALL_LIGHT ^ ALL_BITS)) lightSeen = true;
  for (uint8_t channel = 0; channel < CHANNELS; channel++) {
    const uint8_t fromLast = CHANNELS - 1 - channel;
    if (((changed >> (LEVEL_BITS * fromLast)) & LEVEL_MASK) == 0) continue;
    doubts[channel] = 0;
    turnedChannels |= 1 << fromLast;
    stillChannels &= ~(1 << fromLast);
  }
}

void beginJudging() {
  lastWord = ~wordNow & ALL_BITS;  // so that the first word is noticed
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
