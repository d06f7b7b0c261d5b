import type { ProgramFacts } from '../facts.ts';
import { positionType } from './disc.ts';
import { sectionHeading } from './text.ts';

/** What is remembered from one read to the next. */
const stateText = (facts: ProgramFacts, type: string): string => `${type} position = NO_POSITION;
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
const uint16_t ALL_CHANNELS = (1UL << CHANNELS) - 1;

// A channel alone that stands still while all others have changed and words do not fit is stuck. Once
// all have changed, the watch begins anew.
uint16_t changedChannels = 0;  // one bit a channel, channel 0 the highest
uint8_t troubles = 0;          // illegal words and jumps meanwhile
const uint8_t TROUBLES_MOST = 3;
uint16_t stillChannels = 0;   // did not change in a recorded turn in which the others did
uint16_t turnedChannels = 0;  // changed since the recorded turn began
uint16_t lastWord;`;

const stuckText = `uint16_t stuckChannels() {
  const uint16_t still = ALL_CHANNELS & ~changedChannels;
  const bool isOne = still != 0 && (still & (still - 1)) == 0;
  return stillChannels | (troubles >= TROUBLES_MOST && isOne ? still : 0);
}

void noticeTrouble() {
  if (troubles < 255) troubles++;
}`;

const reachText = (
  type: string,
): string => `// More than one position since the last read is only possible when that was long enough ago.
bool canReach(${type} to, uint32_t nowMs) {
  const uint32_t elapsedMs = nowMs - lastPositionMs;
  return elapsedMs > HALF_TURN_MS || gapBetween(to, lastPosition) <= (elapsedMs + 1) * TURN / 1000;
}`;

const changeText = `void noticeChange() {
  const uint16_t changed = wordNow ^ lastWord;
  lastWord = wordNow;
  if (wordNow != ALL_LIGHT) darkSeen = true;
  if (wordNow != (ALL_LIGHT ^ ALL_BITS)) lightSeen = true;
  for (uint8_t fromLast = 0; fromLast < CHANNELS; fromLast++) {
    if (((changed >> (LEVEL_BITS * fromLast)) & LEVEL_MASK) == 0) continue;
    changedChannels |= 1 << fromLast;
    turnedChannels |= 1 << fromLast;
    stillChannels &= ~(1 << fromLast);
  }
  if (changedChannels != ALL_CHANNELS) return;
  changedChannels = 0;
  troubles = 0;
}`;

const judgeText = `void beginJudging() {
  lastWord = ~wordNow & ALL_BITS;  // so that the first word is noticed
  noticeChange();
  changedChannels = 0;
}

// A word that the disc does not have gives no position and no guess. A jump is reported, not hidden.
void judgeWord(uint32_t nowMs) {
  const bool isNew = wordNow != lastWord;
  if (isNew) noticeChange();
  position = positionOf(wordNow);
  if (position == NO_POSITION) {
    if (isNew && lastPosition != NO_POSITION) noticeTrouble();
    if (nowMs - lastPositionMs > HALF_TURN_MS) lastPosition = NO_POSITION;
    return;
  }
  if (position != lastPosition && lastPosition != NO_POSITION && !canReach(position, nowMs)) {
    jumped = true;
    noticeTrouble();
  }
  lastPosition = position;
  lastPositionMs = nowMs;
}`;

/** Word to position, and what is suspicious about it. */
export function judgingText(facts: ProgramFacts): string {
  const { type } = positionType(facts.positions);
  return [
    sectionHeading('Judging'),
    stateText(facts, type),
    stuckText,
    reachText(type),
    changeText,
    judgeText,
  ].join('\n\n');
}
