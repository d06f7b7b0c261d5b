// How much time the program takes beside the converter it waits for, on the emulated chip.
import { programFor } from '../src/core/program/index.ts';
import { buildAvr } from '../test/support/avrBuild.ts';
import { AvrChip, CLOCK_HZ } from '../test/support/avrChip.ts';
import { DARK_COUNTS, jettyHead, jettyInstrument, setCounts } from '../test/support/avrVane.ts';

type Report = (row: { name: string; value: number; unit: string }) => void;

const CHANNELS = 5;
const MEASURED_MS = 300;

/** Nothing but conversions, one after another: what the converter needs by itself. */
const onlyConversions = `
void setup() {}
void loop() {
  for (;;) {
    ADCSRA |= _BV(ADSC);
    while (ADCSRA & _BV(ADSC)) {
    }
  }
}`;

/** The plain way: the core's own call for each channel, and nothing done with it. */
const plainReads = `
volatile int counts[${CHANNELS}];
void setup() {}
void loop() {
  for (uint8_t channel = 0; channel < ${CHANNELS}; channel++) counts[channel] = analogRead(A0 + channel);
}`;

/** Time from each start of a read of all channels to the next. [us], rising */
async function readTimesUs(source: string): Promise<number[]> {
  const chip = new AvrChip((await buildAvr(source)).hex);
  for (let input = 0; input < CHANNELS; input++) setCounts(chip, input, DARK_COUNTS);
  chip.runMs(MEASURED_MS);
  const settled = 2 * CHANNELS; // the first conversion of all takes longer
  const starts = chip.conversionCycles.filter((_, i) => i >= settled && i % CHANNELS === 0);
  const times = starts.slice(1).map((cycles, i) => ((cycles - starts[i]!) * 1e6) / CLOCK_HZ);
  return times.sort((a, b) => a - b);
}

const median = (rising: readonly number[]): number => rising[rising.length >> 1]!;

/** Rows: read loop, its rivals, their ratio, the longest pause, and the size of the program. */
export async function run(report: Report): Promise<void> {
  const instrument = jettyInstrument({ baud: 57_600, lineIntervalMs: 100 });
  const { source } = programFor(instrument, jettyHead(instrument));
  const ours = await readTimesUs(source);
  const converter = median(await readTimesUs(onlyConversions));
  const plain = median(await readTimesUs(plainReads));
  const { flashBytes, ramBytes } = await buildAvr(source);
  const rows: readonly (readonly [string, number, string])[] = [
    ['read and judge five channels, median', median(ours), 'us'],
    ['five conversions and nothing else', converter, 'us'],
    ['read loop over the converter alone (goal 1.05)', median(ours) / converter, 'x'],
    ['five plain reads by the core, nothing judged', plain, 'us'],
    ['read loop over plain reads', median(ours) / plain, 'x'],
    ['longest pause between two reads, while a line is written', ours.at(-1)!, 'us'],
    ['flash (goal 8192)', flashBytes, 'byte'],
    ['memory (goal 600)', ramBytes, 'byte'],
  ];
  for (const [name, value, unit] of rows) report({ name, value: Number(value.toFixed(3)), unit });
}
