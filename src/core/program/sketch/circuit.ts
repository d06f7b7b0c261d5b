import type { ProgramFacts } from '../facts.ts';
import { braced, sectionHeading } from './text.ts';

/** Name of a pin in the program's language: `A0` stays, `D2` is plain 2. */
export function pinText(pin: string): string {
  return pin.replace(/^D/, '');
}

/** Pins, thresholds and which side of them is light. */
export function circuitText(facts: ProgramFacts): string {
  const { wiring, lowCounts, highCounts, levelWhenHigh, lightIsHigh } = facts;
  const most = 2 ** wiring.board.converterBits - 1;
  return `${sectionHeading('Circuit')}

const uint8_t CHANNELS = ${wiring.channelPins.length};
const uint8_t CHANNEL_PIN[CHANNELS] = ${braced(wiring.channelPins.map(pinText))};

// Thresholds of each channel in counts of the converter, 0 to ${most}. A channel turns high at its upper
// threshold and low at its lower one. Between them it stays as it was, so that noise on an edge of
// the disc does not make it chatter.
const uint16_t LOW_COUNTS[CHANNELS] = ${braced(lowCounts)};
const uint16_t HIGH_COUNTS[CHANNELS] = ${braced(highCounts)};

// High counts mean ${lightIsHigh ? 'light' : 'shade'}, and on this disc that is a ${levelWhenHigh}.
const uint8_t LEVEL_WHEN_HIGH = ${levelWhenHigh};
const uint16_t ALL_CHANNELS = ${2 ** wiring.channelPins.length - 1};  // a word of ones`;
}
