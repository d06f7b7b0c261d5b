import type { ProgramFacts } from '../facts.ts';
import { sectionHeading } from '../unit/text.ts';
import { pinText } from './circuit.ts';

const soFar = `

uint16_t pulsesSoFar() {
  noInterrupts();
  const uint16_t pulses = cupPulses;
  interrupts();
  return pulses;
}`;

/** Cup pulses by interrupt: both edges are watched, and a level counts only after a quiet time without any edge. */
export function cupsText({ cups, averages }: ProgramFacts): string | null {
  if (!cups) return null;
  return `${sectionHeading('Cups')}

const uint8_t CUP_PIN = ${pinText(cups.pin)};

// A contact bounces when it closes and when it opens. Its level counts only after this long without
// any edge, in microseconds.
const uint32_t QUIET_US = ${cups.quietUs};

volatile uint32_t cupPulses = 0;     // closings that lasted
volatile uint32_t cupEdges = 0;      // everything the pin did
volatile uint32_t cupEdgeUs = 0;     // when the last edge came
volatile uint8_t cupLevel = HIGH;    // level since that edge
volatile uint8_t cupAccepted = HIGH; // last level that lasted

// Call it with interrupts off.
void acceptCupLevel(uint32_t nowUs) {
  if (cupLevel == cupAccepted || nowUs - cupEdgeUs < QUIET_US) return;
  cupAccepted = cupLevel;
  if (cupAccepted == LOW) cupPulses++;
}

void onCupEdge() {
  const uint32_t nowUs = micros();
  acceptCupLevel(nowUs);  // the level before this edge may have lasted
  cupEdges++;
  cupEdgeUs = nowUs;
  cupLevel = digitalRead(CUP_PIN);
}

void watchCups() {
  if (cupLevel == cupAccepted) return;
  noInterrupts();
  acceptCupLevel(micros());
  interrupts();
}

void startCups() {
  pinMode(CUP_PIN, INPUT_PULLUP);
  cupLevel = digitalRead(CUP_PIN);
  cupAccepted = cupLevel;
  attachInterrupt(digitalPinToInterrupt(CUP_PIN), onCupEdge, CHANGE);
}${averages ? soFar : ''}`;
}
