import type { ProgramFacts } from '../facts.ts';
import { sectionHeading } from './text.ts';

/** Before the read that counts: nothing, or one that is thrown away. */
const throwAway = `
    finishMeasuring();  // thrown away: the sensor is too weak to charge the converter at once
    startMeasuring(channel);`;

/** Voltages to counts, counts to a word. */
export function readingText(facts: ProgramFacts): string {
  const twice = facts.readTwice ? throwAway : '';
  return `${sectionHeading('Reading')}

uint16_t counts[CHANNELS];
uint16_t highNow;  // one bit a channel, channel 0 the highest: 1 while its counts are high
uint16_t wordNow;  // the same as levels of the code

// Starts the converter on a channel, against the supply that also feeds the sensors. It works by
// itself for 104 us from here, which is time to judge the channel before.
void startMeasuring(uint8_t channel) {
  ADMUX = _BV(REFS0) | (CHANNEL_PIN[channel] - A0);
  ADCSRA |= _BV(ADSC);
}

uint16_t finishMeasuring() {
  while (ADCSRA & _BV(ADSC)) {
  }
  return ADC;
}

void readChannels() {
  uint16_t high = highNow;
  uint16_t bit = 1 << (CHANNELS - 1);
  startMeasuring(0);
  for (uint8_t channel = 0; channel < CHANNELS; channel++, bit >>= 1) {${twice}
    const uint16_t now = finishMeasuring();
    if (channel + 1 < CHANNELS) startMeasuring(channel + 1);
    counts[channel] = now;
    if (now >= HIGH_COUNTS[channel]) high |= bit;
    else if (now <= LOW_COUNTS[channel]) high &= ~bit;
  }
  highNow = high;
  wordNow = LEVEL_WHEN_HIGH ? high : high ^ ALL_CHANNELS;
}

// At the start there is no "as it was" yet: the nearer threshold decides.
void readChannelsFirst() {
  for (uint8_t channel = 0; channel < CHANNELS; channel++) {
    startMeasuring(channel);${twice}
    const uint16_t middle = (LOW_COUNTS[channel] + HIGH_COUNTS[channel] + 1) / 2;
    highNow = (highNow << 1) | (finishMeasuring() >= middle);
  }
}`;
}
