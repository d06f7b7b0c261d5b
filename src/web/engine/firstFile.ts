import { readDesign, type Design } from '../../app/api.ts';
import { setFields, startingFile, type FieldEdit } from '../../core/instrument/index.ts';
import { virtualBuilds } from '../../core/proof/index.ts';
import { positionsOf, type FirstAnswers } from './firstAnswers.ts';
import { memoryFiles } from './memoryFiles.ts';

/** A first file, and what had to give so that it can be made and read. */
export interface FirstFile {
  readonly text: string;
  readonly positions: number;
  readonly accuracyDeg: number;
  readonly turnRateDegPerS: number;
  readonly diameterMm: number;
  /** Share of virtual builds that meet it. [-] */
  readonly goodShare: number;
}

const BUILDS = { builds: 200, seed: 1 };
const WANTED_YIELD = 0.95;
/** Errors that are accepted, as shares of a step, the strictest first: half a step is the count's own. */
const ACCURACIES = [0.75, 0.9, 1.1, 1.5] as const;
/** Turn rates that a vane asks for, and what is still of use. [deg/s] */
const TURN_RATES = [90, 60, 45, 30, 20, 10, 5, 2] as const;
/** Share of the speed limit that is promised. [-] */
const SAFE_SPEED = 0.9;
/** A disc is made this much larger at a time, four times at most, where nothing else helps. */
const LARGER = 1.3;
const MOST_LARGER = 4;

/** The sensor at hand, with the light and the opening that suit it. */
function headEdits(detector: FirstAnswers['detector'], diameterMm: number, positions: number): FieldEdit[] {
  // A spot a third of the shortest mark leaves its middle fully open.
  const markMm = (Math.PI * diameterMm * 0.8 * 2) / positions;
  const widthMm = Number(Math.min(1.2, Math.max(0.3, markMm / 3)).toFixed(2));
  return [
    { path: ['head', 'detector'], value: { kind: detector } },
    { path: ['head', 'light'], value: { kind: 'led', currentMa: 10 } },
    { path: ['head', 'aperture'], value: { shape: 'slit', widthMm, lengthMm: 2 } },
  ];
}

function editsOf(answers: FirstAnswers, positions: number, diameterMm: number): FieldEdit[] {
  const { process, detector, boreDiameterMm } = answers;
  const isColour = detector === 'colour-sensor';
  return [
    { path: ['need', 'positions'], value: positions },
    { path: ['disc', 'code'], value: isColour ? 'ternary-modular' : 'reflected-gray' },
    { path: ['disc', 'diameterMm'], value: diameterMm },
    { path: ['disc', 'bore'], value: { shape: 'round', diameterMm: boreDiameterMm } },
    {
      path: ['disc', 'hubDiameterMm'],
      value: Number(Math.max(diameterMm / 3, boreDiameterMm + 10).toFixed(1)),
    },
    { path: ['disc', 'thicknessMm'] },
    { path: ['disc', 'webMm'] },
    { path: ['disc', 'rimMm'] },
    { path: ['disc', 'process'], value: { kind: process } },
    ...(isColour && process === 'colour-print'
      ? [{ path: ['disc', 'form'], value: { kind: 'overlay', colours: ['#c8281e', '#28963c', '#2850b4'] } }]
      : []),
    ...headEdits(detector, diameterMm, positions),
  ];
}

interface Tried {
  readonly text: string;
  readonly design: Design;
}

async function tried(text: string, edits: readonly FieldEdit[]): Promise<Tried | null> {
  const changed = setFields(text, edits);
  try {
    const design = await readDesign(memoryFiles({ 'instrument.yaml': changed }), 'instrument.yaml');
    return design.head.faults.length === 0 ? { text: changed, design } : null;
  } catch {
    // This one cannot be made or read: the next is tried.
    return null;
  }
}

/** The need that this very disc meets: speed it can follow, and the strictest accuracy that enough builds reach. */
async function withNeed(
  { text, design }: Tried,
  positions: number,
  diameterMm: number,
): Promise<FirstFile | null> {
  const limit = design.head.speed.limitDegPerS * SAFE_SPEED;
  const turnRateDegPerS = TURN_RATES.find((rate) => rate <= limit);
  if (turnRateDegPerS === undefined) return null;
  for (const share of ACCURACIES) {
    const accuracyDeg = Number(((share * 360) / positions).toPrecision(3));
    const { yield: good } = virtualBuilds(design.head, { ...BUILDS, accuracyDeg });
    if (good.value < WANTED_YIELD) continue;
    const edits: FieldEdit[] = [
      { path: ['need', 'accuracyDeg'], value: accuracyDeg },
      { path: ['need', 'turnRateDegPerS'], value: turnRateDegPerS },
    ];
    const goodShare = good.value;
    return { text: setFields(text, edits), positions, accuracyDeg, turnRateDegPerS, diameterMm, goodShare };
  }
  return null;
}

/**
 * A first file that can be made, reads its disc and meets its need: fewer positions before a larger disc.
 *
 * @returns `null` where nothing with these parts does.
 */
export async function firstFile(answers: FirstAnswers): Promise<FirstFile | null> {
  const base = startingFile(answers.name);
  const most = Math.max(2, Math.min(answers.positions, positionsOf(answers)));
  const counts = [...new Set([most, most / 2, most / 4].map((count) => 2 * Math.round(count / 2)))];
  const wanted = answers.detector === 'colour-sensor' ? [most, 9, 3] : counts;
  for (let larger = 0; larger <= MOST_LARGER; larger++) {
    const diameterMm = Math.min(600, Math.round(answers.diameterMm * LARGER ** larger));
    for (const positions of wanted.filter((count) => count >= 2 && count <= most)) {
      const one = await tried(base, editsOf(answers, positions, diameterMm));
      const file = one && (await withNeed(one, positions, diameterMm));
      if (file) return file;
    }
  }
  return null;
}
