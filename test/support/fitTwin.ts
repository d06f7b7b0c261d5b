import { boardNamed } from '../../src/core/boards/index.ts';
import { buildCode, type CodeTable } from '../../src/core/codes/index.ts';
import { planDisc, type DiscPlan } from '../../src/core/disc/index.ts';
import { planHead, ribMargin, type HeadPlan } from '../../src/core/head/index.ts';
import { readInstrument, type Instrument } from '../../src/core/instrument/index.ts';
import { lineCharsAtMost } from '../../src/core/record/index.ts';
import { handAngles, handRows, handText, normal, type HandBuild, type HandMotion } from './handTurn.ts';

/** A design read from a file, as the application carries it. */
export interface Design {
  readonly text: string;
  readonly instrument: Instrument;
  readonly code: CodeTable;
  readonly disc: DiscPlan;
  readonly head: HeadPlan;
}

/** What a test may ask of the design; the rest is the vane on the jetty with fast sensors. */
export interface TwinWishes {
  readonly positions?: number;
  readonly code?: string;
  readonly diameterMm?: number;
  readonly accuracyDeg?: number;
  readonly detector?: 'phototransistor' | 'photoresistor';
}

/** Invented: a vane whose windows come out as drawn. */
export function twinFile({
  positions = 32,
  code = 'reflected-gray',
  diameterMm = 84,
  accuracyDeg = 12,
  detector,
}: TwinWishes = {}): string {
  return `vanewright: 1
name: invented twin # of a vane on a boathouse jetty
need: { positions: ${positions}, accuracyDeg: ${accuracyDeg} }
disc:
  code: ${code}
  diameterMm: ${diameterMm}
  hubDiameterMm: 30
  webMm: 1.2
  process: { kind: film, windowGrowthMm: 0 }
head:
  detector: { kind: ${detector ?? 'phototransistor'} } # fast
  aperture: { shape: slit, widthMm: 1.2, lengthMm: 2 }
controller: { lineIntervalMs: 250 }
`;
}

/** The design of a file. */
export function designOf(text: string): Design {
  const { instrument } = readInstrument(text, 'twin.yaml');
  const code = buildCode(instrument.disc.code, instrument.need.positions);
  const board = boardNamed(instrument.controller.board)!;
  const ribCost = ribMargin({ spec: instrument.head, circuit: instrument.circuit, board });
  const disc = planDisc(code, instrument.disc, ribCost);
  const head = planHead(disc, instrument.head, instrument.circuit, board, {
    baud: instrument.controller.baud,
    lineChars: lineCharsAtMost(code.channels.length, 1023),
    turnRateDegPerS: instrument.need.turnRateDegPerS,
  });
  return { text, instrument, code, disc, head };
}

/** What is wrong with a hand-made build of a design. */
export interface TwinFaults {
  readonly columns?: readonly number[];
  readonly inverted?: readonly number[];
  readonly boreMm?: readonly [number, number];
  /** Standard deviations of edges and of the channels' places, drawn by `random`. [mm] */
  readonly edgeSdMm?: number;
  readonly alongSdMm?: number;
  readonly random?: () => number;
  /** Channels with a dim light: lit counts of their own. */
  readonly litCounts?: Readonly<Record<number, number>>;
  readonly stuckAt?: Readonly<Record<number, number>>;
  readonly noiseCounts?: number;
  readonly sampleMs?: number;
  readonly backlashDeg?: number;
}

const DEG = 180 / Math.PI;

/** The build that a maker made of a design. */
export function builtBy({ head, disc }: Design, faults: TwinFaults = {}): HandBuild {
  const { edgeSdMm = 0, alongSdMm = 0, random = () => 0.5 } = faults;
  const off = (sd: number): number => (sd > 0 ? sd * normal(random) : 0);
  const aperture = head.spec.aperture;
  return {
    channels: head.channels.map(({ track, radiusMm, angleDeg }, channel) => ({
      windows: disc.tracks[track]!.windows.map(
        ({ fromDeg, toDeg }) =>
          [fromDeg + (off(edgeSdMm) * DEG) / radiusMm, toDeg + (off(edgeSdMm) * DEG) / radiusMm] as const,
      ),
      radiusMm,
      angleDeg,
      litCounts: faults.litCounts?.[channel] ?? 900,
      darkCounts: 100,
      alongMm: off(alongSdMm),
      ...(faults.stuckAt?.[channel] === undefined ? {} : { stuckAt: faults.stuckAt[channel] }),
    })),
    slitMm: aperture.shape === 'slit' ? aperture.widthMm : 1.2,
    boreMm: faults.boreMm ?? [0, 0],
    noiseCounts: faults.noiseCounts ?? 2,
    sampleMs: faults.sampleMs ?? 10,
    columns: faults.columns ?? head.channels.map((_, c) => c),
    inverted: faults.inverted ?? [],
    ...(faults.backlashDeg === undefined ? {} : { backlashDeg: faults.backlashDeg }),
  };
}

/** Disc angles of a hand turning a build, one motion after another. [deg] */
export function turnedBy(
  build: HandBuild,
  motions: readonly Omit<HandMotion, 'startDeg'>[],
  startDeg: number,
): number[] {
  const angles: number[] = [];
  for (const motion of motions) {
    angles.push(...handAngles({ ...motion, startDeg: angles.at(-1) ?? startDeg }, build.sampleMs));
  }
  return angles;
}

/** A recording of a build, as a maker's serial monitor saves it. */
export function recordedText(
  build: HandBuild,
  angles: readonly number[],
  random: () => number,
  part?: string,
): string {
  return handText(handRows(build, angles, random), build.sampleMs, part);
}
