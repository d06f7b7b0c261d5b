// How long it takes to find the wires of a recorded turn, beside trying every arrangement.
import { buildCode } from '../src/core/codes/index.ts';
import { fitRecording, readRecording } from '../src/core/fit/index.ts';
import { codeWalk, type CodeWalk } from '../src/core/fit/wiring/codeWalk.ts';
import { findWirings } from '../src/core/fit/wiring/findWirings.ts';
import { builtBy, designOf, recordedText, turnedBy, twinFile } from '../test/support/fitTwin.ts';
import { draws } from '../test/support/handTurn.ts';
import { walkedCode, type WalkedColumns } from '../test/support/walkedCode.ts';

type Report = (row: { name: string; value: number; unit: string }) => void;

function medianMs(work: () => void, times: number): number {
  const took = Array.from({ length: times }, () => {
    const from = performance.now();
    work();
    return performance.now() - from;
  });
  return took.sort((a, b) => a - b)[times >> 1]!;
}

/** Every order of so many things. */
function* orders(things: readonly number[]): Generator<readonly number[]> {
  if (things.length < 2) yield things;
  for (const [i, thing] of things.entries()) {
    for (const rest of orders([...things.slice(0, i), ...things.slice(i + 1)])) yield [thing, ...rest];
  }
}

/** The plain way: every order of the wires, each inverted or not, tried on the words one after another. */
function everyArrangement(walk: CodeWalk, { firstBits, moves }: WalkedColumns): number {
  const words = [firstBits];
  for (const { changed, to } of moves) words.push((words.at(-1)! & ~changed) | to);
  const places = new Map(walk.bits.map((bits, gap) => [bits, gap]));
  const channels = Array.from({ length: walk.channels }, (_, c) => c);
  let fitting = 0;
  for (const order of orders(channels)) {
    for (let turned = 0; turned < 2 ** walk.channels; turned++) {
      const read = (bits: number): number =>
        order.reduce(
          (word, column, channel) =>
            word | ((((bits >>> column) & 1) ^ ((turned >>> channel) & 1)) << channel),
          0,
        );
      let last = places.get(read(words[0]!));
      let isFit = last !== undefined;
      for (let i = 1; i < words.length && isFit; i++) {
        const next = places.get(read(words[i]!));
        const step = next === undefined ? 0 : (next - last! + walk.bits.length) % walk.bits.length;
        isFit = step === 1 || step === walk.bits.length - 1;
        last = next;
      }
      if (isFit) fitting += 1;
    }
  }
  return fitting;
}

/** Rows: the search for 5 to 12 channels, the rival for 5 to 7, their ratio, and a whole fit. */
export async function run(report: Report): Promise<void> {
  for (const channels of [5, 6, 7, 8, 10, 12]) {
    const code = buildCode('reflected-gray', 2 ** channels);
    const walk = codeWalk(code);
    const walked = walkedCode(code, Math.round(1.05 * code.positions), channels);
    const every = 2 ** channels - 1;
    const ours = medianMs(() => findWirings(walk, [walked], every, channels), 3);
    report({ name: `wires of ${channels} channels, ${code.positions} positions`, value: ours, unit: 'ms' });
    if (channels > 7) continue;
    const rival = medianMs(() => everyArrangement(walk, walked), 1);
    report({
      name: `every arrangement of ${channels} channels over the search`,
      value: rival / ours,
      unit: 'x',
    });
  }
  const design = designOf(twinFile());
  const random = draws(1);
  const build = builtBy(design, { random, edgeSdMm: 0.05 });
  const hand = (turns: number) => ({ turns, degPerS: 20, change: 0.3, phase: 1 });
  const text = recordedText(build, turnedBy(build, [hand(2.1), hand(-2.1)], 10), random);
  const whole = medianMs(() => {
    const recording = readRecording([{ name: 'turn.csv', text }], { scaleCounts: 1024 });
    fitRecording(design.instrument, design.disc, design.head, recording, {
      recordedAt: '2024-05-17T10:30:00Z',
    });
  }, 3);
  const rows = text.split('\n').length;
  report({ name: `whole fit of ${rows} rows, 32 positions`, value: whole, unit: 'ms' });
}
