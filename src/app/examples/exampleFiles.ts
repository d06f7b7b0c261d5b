import { seededRandom } from '../../core/units/index.ts';
import type { InstrumentFiles, OutputFile } from '../../ports/index.ts';
import { readDesign, type Design } from '../design.ts';
import { exampleNames, type ExampleName } from './exampleNames.ts';
import { handTurns, type InventedBuild, type InventedHand } from './handTurn.ts';
import { domeMoments, handMoments, logCsv, windMoments, type LogSpan } from './logs.ts';
import { releaseCsv } from './release.ts';

/** One seed for all, so that every file can be made again to the byte. */
const SEED = 20240517;

const START_MS = Date.UTC(2024, 4, 1);

/** Two weeks of five minutes. */
const FORTNIGHT: LogSpan = { startMs: START_MS, stepMinutes: 5, lines: 14 * 288 };

/** A week of five minutes. */
const WEEK: LogSpan = { startMs: START_MS, stepMinutes: 5, lines: 7 * 288 };

/** A careful home build: sensors a tenth of a millimetre off, parts that differ by a tenth. */
function careful(channels: number, boreMm: readonly [number, number]): InventedBuild {
  const columns = Array.from({ length: channels }, (_, c) => c);
  return { boreMm, alongSdMm: 0.08, partSd: 0.08, columns, noiseCounts: 1 };
}

/** Once there and once back. */
function thereAndBack(degPerS: number, sampleMs: number): InventedHand[] {
  return [
    { turns: -1.2, degPerS, startDeg: 0, sampleMs },
    { turns: 1.2, degPerS, startDeg: 300, sampleMs },
  ];
}

const named = (name: string, file: string, content: string): OutputFile => ({
  path: `examples/${name}/${file}`,
  content,
});

/** Recordings of a turn either way. The file names tell the way of the vane, seen from above. */
function turnFiles(name: string, design: Design, build: InventedBuild, hands: InventedHand[]): OutputFile[] {
  const isUp = design.instrument.head.patternedFace === 'up';
  // With the face up a vane that turns clockwise brings smaller disc angles under the head.
  const ways = hands.map(({ turns }) => (turns < 0 === isUp ? 'cw' : 'ccw'));
  const texts = handTurns(design, build, hands, seededRandom(SEED));
  return texts.map((text, i) => named(name, `turn-${ways[i]!}.csv`, text));
}

function jettyFiles(design: Design): OutputFile[] {
  const { instrument } = design;
  const random = seededRandom(SEED + 1);
  // Two wires exchanged, and a bore 0.15 mm beside the middle.
  const build = { ...careful(5, [0.12, -0.09]), columns: [0, 1, 3, 2, 4] };
  return [
    ...turnFiles('jetty', design, build, thereAndBack(15, 20)),
    named('jetty', 'release.csv', releaseCsv({ restDeg: 225, heldDeg: 15, damping: 0.35, periodS: 1.1 }, random)),
    named('jetty', 'log.csv', logCsv(instrument, FORTNIGHT, windMoments(instrument, FORTNIGHT, random))),
  ];
}

function domeFiles(design: Design): OutputFile[] {
  const random = seededRandom(SEED + 2);
  return [
    ...turnFiles('dome', design, careful(9, [0.1, 0.1]), thereAndBack(6, 20)),
    named('dome', 'log.csv', logCsv(design.instrument, WEEK, domeMoments(WEEK, random))),
  ];
}

function sluiceFiles(design: Design): OutputFile[] {
  const random = seededRandom(SEED + 3);
  const { instrument } = design;
  return [
    ...turnFiles('sluice', design, careful(6, [0.1, -0.05]), thereAndBack(15, 20)),
    named('sluice', 'log.csv', logCsv(instrument, WEEK, handMoments(instrument.need.turnRangeDeg, WEEK, random))),
  ];
}

function tricolourFiles({ instrument }: Design): OutputFile[] {
  const random = seededRandom(SEED + 4);
  return [named('tricolour', 'log.csv', logCsv(instrument, WEEK, handMoments(360, WEEK, random)))];
}

const makers: Readonly<Record<ExampleName, (design: Design) => OutputFile[]>> = {
  jetty: jettyFiles,
  dome: domeFiles,
  sluice: sluiceFiles,
  tricolour: tricolourFiles,
};

/** Recordings and logs of the four examples, all of them invented. `root` ends without a slash. */
export async function exampleFiles(files: InstrumentFiles, root: string): Promise<OutputFile[]> {
  const made = await Promise.all(
    exampleNames.map(async (name) =>
      makers[name](await readDesign(files, `${root}/examples/${name}/instrument.yaml`)),
    ),
  );
  return made.flat();
}
