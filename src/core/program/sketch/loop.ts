import type { ProgramFacts } from '../facts.ts';
import { sectionHeading } from './text.ts';

/** Start and main loop. */
export function loopText({ baud, cups }: ProgramFacts): string {
  return `${sectionHeading('Start and loop')}

void setup() {
  Serial.begin(${baud});
  readChannelsFirst();${cups ? '\n  startCups();' : ''}
}

void loop() {
  readChannels();
  const uint32_t nowMs = millis();
  judgeWord(nowMs);
${cups ? '  watchCups();\n' : ''}  if (lineSent == lineLength && nowMs - lastLineMs >= LINE_INTERVAL_MS) {
    lastLineMs += LINE_INTERVAL_MS;
    writeLine(nowMs);
  } else if (position == NO_POSITION) {
    illegalBefore = true;
  }
  sendLine();
}`;
}
