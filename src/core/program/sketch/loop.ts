import type { ProgramFacts } from '../facts.ts';
import { sectionHeading } from '../unit/text.ts';
import { TURN_MOST_MS } from './commands.ts';

/** Line writer of each format. */
const writers: Record<Exclude<ProgramFacts['format'], 'senml'>, string> = {
  text: 'writeTextLine',
  'json-lines': 'writeJsonLine',
  'nmea-mwd': 'writeSentence',
  'nmea-mwv': 'writeSentence',
};

const copyCups = `  noInterrupts();  // both counters from the same moment
  const uint32_t pulses = cupPulses;
  const uint32_t edges = cupEdges;
  interrupts();
`;

function writeText({ format, cups }: ProgramFacts): string {
  const writer = writers[format as keyof typeof writers];
  const own = writer === 'writeSentence' ? (cups ? ', pulses' : '') : cups ? ', pulses, edges' : '';
  const all = cups ? ', pulses, edges' : '';
  const choose =
    writer === 'writeTextLine'
      ? `  writeTextLine(nowMs${all});`
      : `  if (recordingTurn) writeTextLine(nowMs${all});  // a recorded turn needs the counts\n  else ${writer}(nowMs${own});`;
  return `void writeReading(uint32_t nowMs) {
${cups ? copyCups : ''}${choose}
}`;
}

/** Sending, start and main loop. */
export function loopText(facts: ProgramFacts): string {
  const { baud, cups, averages, sleep, lineIntervalMs } = facts;
  const watching = [
    cups ? '  watchCups();' : '',
    averages ? '  addToMean(nowMs);' : '',
    averages && cups ? '  watchGust(nowMs, pulsesSoFar());' : '',
  ].filter((row) => row !== '');
  return `${sectionHeading('Start and loop')}

const uint32_t LINE_INTERVAL_MS = ${lineIntervalMs};
const uint32_t TURN_MOST_MS = ${TURN_MOST_MS};
uint32_t lastLineMs = 0;

${writeText(facts)}

// Hands over as much as fits and does not wait, so that reading goes on while the line goes out.
void sendLine() {
  while (lineSent < lineLength && SERIAL_LINE.availableForWrite() > 0) SERIAL_LINE.write(line[lineSent++]);
}

void readCommands(uint32_t nowMs) {
  while (SERIAL_LINE.available() > 0) takeCharacter(SERIAL_LINE.read(), nowMs);
  if (recordingTurn && nowMs - turnBeganMs >= TURN_MOST_MS) endTurn();
}
${sleep === 'awake' ? '' : '\n@SLEEP@\n'}
void setup() {
  nameStart();
  recallSettings();
  SERIAL_LINE.begin(${baud});
  beginReading();
  readCounts();
  judgeFirstCounts();
  beginJudging();${cups ? '\n  startCups();' : ''}
  wdt_enable(WDTO_2S);
}

void loop() {
  wdt_reset();
  readChannels();
  const uint32_t nowMs = millis();
  judgeWord(nowMs);
${watching.length > 0 ? `${watching.join('\n')}\n` : ''}  readCommands(nowMs);
  const bool isFree = lineSent == lineLength;
  if (isFree && statusAsked) {
    writeStatus();
    statusAsked = false;
  } else if (isFree && (recordingTurn || nowMs - lastLineMs >= LINE_INTERVAL_MS)) {
    lastLineMs = recordingTurn ? nowMs : lastLineMs + LINE_INTERVAL_MS;
    writeReading(nowMs);
  } else if (position == NO_POSITION) {
    illegalBefore = true;
  }
  sendLine();${sleep === 'awake' ? '' : '\n  rest(nowMs);'}
}`;
}
