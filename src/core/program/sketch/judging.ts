import type { ProgramFacts } from '../facts.ts';
import { positionBytes } from '../wordTable.ts';
import { sectionHeading } from './text.ts';

/** Word to position, and what is suspicious about it. */
export function judgingText({ positions }: ProgramFacts): string {
  const type = positionBytes(positions) === 1 ? 'uint8_t' : 'uint16_t';
  return `${sectionHeading('Judging')}

${type} position = NO_POSITION;
${type} lastPosition = NO_POSITION;  // the last one that could be read
uint32_t lastPositionMs;

// Noticed since the last line was written.
bool jumped = false;
bool illegalBefore = false;

// More than one position since the last read is only possible when that was long enough ago.
bool canReach(${type} to, uint32_t nowMs) {
  uint16_t steps = to > lastPosition ? to - lastPosition : lastPosition - to;
  if (steps > POSITIONS - steps) steps = POSITIONS - steps;
  return steps <= 1 || steps <= 1 + (nowMs - lastPositionMs + 1) * 1000 / STEP_US;
}

// A word that the disc does not have gives no position and no guess. A jump is reported, not hidden.
void judgeWord(uint32_t nowMs) {
  position = positionOf(wordNow);
  if (position == NO_POSITION) {
    if (nowMs - lastPositionMs > HALF_TURN_MS) lastPosition = NO_POSITION;
    return;
  }
  if (position != lastPosition && lastPosition != NO_POSITION && !canReach(position, nowMs)) jumped = true;
  lastPosition = position;
  lastPositionMs = nowMs;
}`;
}
