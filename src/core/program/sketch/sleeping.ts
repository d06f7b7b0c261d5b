import type { ProgramFacts } from '../facts.ts';
import { sectionHeading } from '../unit/text.ts';

const idleText = `// Halted until the next interrupt: the millisecond tick, a cup edge or the serial line. Nothing is missed.
void rest(uint32_t) {
  set_sleep_mode(SLEEP_MODE_IDLE);
  sleep_mode();
}`;

const deepText = `volatile bool napping = false;

ISR(WDT_vect) {
  napping = false;
}

// Everything off for one period of the watchdog's own clock, which is exact to a tenth only.
void nap(uint8_t period, uint16_t ms) {
  const uint8_t tick = TCCR0B;
  const uint8_t setting = _BV(WDIE) | ((period & 8) << 2) | (period & 7);
  noInterrupts();
  napping = true;
  TCCR0B = 0;  // the millisecond clock stands still, so that it is known by how much to set it on
  wdt_reset();
  WDTCSR = _BV(WDCE) | _BV(WDE);
  WDTCSR = setting;  // within four cycles of the line before
  interrupts();
  set_sleep_mode(SLEEP_MODE_PWR_DOWN);
  while (napping) sleep_mode();
  noInterrupts();
  timer0_millis += ms;
  TCCR0B = tick;
  interrupts();
  wdt_enable(WDTO_2S);
}

// Off until the next line is due. What happens meanwhile is never known.
void rest(uint32_t nowMs) {
  if (recordingTurn || statusAsked || lineSent < lineLength) return;
  SERIAL_LINE.flush();
  const uint8_t converter = ADCSRA;
  ADCSRA = 0;
  uint32_t left = LINE_INTERVAL_MS - (nowMs - lastLineMs);
  for (uint8_t period = 10; left >= 16 && left <= LINE_INTERVAL_MS;) {
    const uint16_t ms = 16U << (period - 1);
    if (period > 1 && left < ms) {
      period--;
      continue;
    }
    nap(period - 1, ms);
    left -= ms;
  }
  ADCSRA = converter;
}`;

/** What the controller does between two reads. */
export function sleepingText({ sleep }: ProgramFacts): string | null {
  if (sleep === 'awake') return null;
  return `${sectionHeading('Sleep')}\n\n${sleep === 'idle' ? idleText : deepText}`;
}
