import type { DiscPlan, RingSector } from '../../src/core/disc/index.ts';
import type { Aperture, Detector, HeadPlan } from '../../src/core/head/index.ts';
import { degToRad, type Random } from '../../src/core/units/index.ts';
import type { DenseBuild } from './denseTurn.ts';
import { handDisc } from './handDisc.ts';
import { handHead } from './handHead.ts';

/** A design with one build of it, for the scan and for the tool alike. */
export interface RandomBuild {
  readonly name: string;
  readonly head: HeadPlan;
  readonly build: DenseBuild;
  conditionsFor(model: EdgesOfModel): BuildConditions;
}

/** The part of a turn model that says which edge is which. */
export interface EdgesOfModel {
  readonly channels: readonly {
    readonly firstEdge: number;
    readonly seen: { readonly edgesDeg: readonly number[] };
  }[];
  readonly edgesDeg: Float64Array;
}

/** The same build as flat arrays. */
export interface BuildConditions {
  readonly edgeMm: Float64Array;
  readonly boreMm: Float64Array;
  readonly alongMm: Float64Array;
  readonly acrossMm: Float64Array;
  readonly risingLight: Float64Array;
  readonly fallingLight: Float64Array;
  /** No channel tells three marks apart. */
  readonly readers: null[];
  /** No wire is shared. */
  readonly readsAs: null;
}

const POSITIONS = [4, 8, 10, 16, 20, 24, 32, 48, 64];

/** A random design that reads, with random errors of making; wide spots are as likely as narrow ones. */
export function randomBuild(random: Random): RandomBuild {
  for (;;) {
    try {
      const made = anyBuild(random);
      if (made.head.faults.length === 0) return made;
    } catch (error) {
      if (!(error instanceof Error) || error.name !== 'VanewrightError') throw error;
    }
  }
}

function anyBuild(random: Random): RandomBuild {
  const between = (low: number, high: number): number => low + (high - low) * random.uniform();
  const oneOf = <T>(things: readonly T[]): T => things[Math.floor(random.uniform() * things.length)]!;
  const positions = oneOf(POSITIONS);
  const firstRadiusMm = between(10, 25);
  const pitchMm = between(5, 10);
  const plain = handDisc({
    family: oneOf(['reflected-gray', 'natural-binary', 'vernier', 'switch-ring']),
    positions,
    firstRadiusMm,
    pitchMm,
    webMm: 1,
    windowLevel: oneOf([0, 1] as const),
    process: { windowGrowthMm: between(-0.3, 0.3) },
  });
  const ribs = random.uniform() < 0.3 ? [anyRib(random, plain, oneOf)] : [];
  const disc = { ...plain, ribs };
  const outermost = firstRadiusMm + pitchMm * (disc.tracks.length - 1);
  const mark = degToRad(360 / positions) * outermost;
  const spec = {
    detector: anyDetector(random),
    aperture: anyAperture(oneOf, Math.min(mark, pitchMm) * between(0.1, 1.8), pitchMm),
  };
  const head = handHead(disc, {
    spec,
    circuit: { sensorTo: oneOf(['supply', 'ground'] as const), hysteresisCounts: between(1, 200) },
  });
  const sd = between(0, 0.1);
  const moves = new Map<string, number>();
  const growth = disc.spec.process.windowGrowthMm;
  for (const { track, windows } of disc.tracks) {
    for (const { fromDeg, toDeg } of windows) {
      moves.set(edgeName(track, fromDeg), sd * random.normal() - growth / 2);
      moves.set(edgeName(track, toDeg), sd * random.normal() + growth / 2);
    }
    for (const { fromDeg, toDeg } of ribs) {
      // A rib is material between two openings, and openings grow.
      moves.set(edgeName(track, fromDeg), sd * random.normal() + growth / 2);
      moves.set(edgeName(track, toDeg), sd * random.normal() - growth / 2);
    }
  }
  const boreMm = [between(-0.5, 0.5), between(-0.5, 0.5)] as const;
  const along = head.channels.map(() => 0.2 * random.normal());
  const across = head.channels.map(() => 0.1 * random.normal());
  return {
    name: JSON.stringify({
      code: disc.spec.code,
      positions,
      firstRadiusMm,
      pitchMm,
      ...spec,
      growth,
      boreMm,
      sd,
    }),
    head,
    build: {
      moveMm: (track, edge) => moves.get(edgeName(track, edge))!,
      boreMm,
      alongMm: (channel) => along[channel]!,
      acrossMm: (channel) => across[channel]!,
    },
    conditionsFor: (model) => {
      const edgeMm = new Float64Array(model.edgesDeg.length);
      for (const [c, { firstEdge, seen }] of model.channels.entries()) {
        const { track } = head.channels[c]!;
        for (const [i, edge] of seen.edgesDeg.entries())
          edgeMm[firstEdge + i] = moves.get(edgeName(track, edge))!;
      }
      return {
        edgeMm,
        boreMm: Float64Array.from(boreMm),
        alongMm: Float64Array.from(along),
        acrossMm: Float64Array.from(across),
        risingLight: new Float64Array(along.length).fill(head.levels.risingLight),
        fallingLight: new Float64Array(along.length).fill(head.levels.fallingLight),
        readers: along.map(() => null),
        readsAs: null,
      };
    },
  };
}

/** A rib well inside some window, over a part of its ring from one side. */
function anyRib(random: Random, disc: DiscPlan, oneOf: <T>(things: readonly T[]) => T): RingSector {
  const { windows, innerRadiusMm, outerRadiusMm } = oneOf(disc.tracks);
  const { fromDeg, toDeg } = oneOf(windows);
  const span = toDeg - fromDeg;
  const reach = (outerRadiusMm - innerRadiusMm) * random.uniform();
  return {
    innerRadiusMm,
    outerRadiusMm: innerRadiusMm + reach,
    fromDeg: fromDeg + span * (0.2 + 0.2 * random.uniform()),
    toDeg: fromDeg + span * (0.6 + 0.2 * random.uniform()),
  };
}

function edgeName(track: number, edgeDeg: number): string {
  return `${track}:${(edgeDeg % 360).toFixed(9)}`;
}

function anyDetector(random: Random): Detector {
  const tau = { riseMs: 20, fallMs: 30, spread: 0 };
  if (random.uniform() < 0.5) {
    const litMa = 0.1 + random.uniform();
    return {
      kind: 'phototransistor',
      litMa,
      darkMa: 0.2 * random.uniform() * litMa,
      saturationV: 0.4,
      ...tau,
    };
  }
  const litOhm = 500 + 5_000 * random.uniform();
  const gamma = 0.5 + 0.4 * random.uniform();
  return { kind: 'photoresistor', litOhm, darkOhm: litOhm * (5 + 200 * random.uniform()), gamma, ...tau };
}

function anyAperture(oneOf: <T>(things: readonly T[]) => T, spotMm: number, pitchMm: number): Aperture {
  return oneOf<Aperture>([
    { shape: 'slit', widthMm: spotMm, lengthMm: 2 },
    { shape: 'round', diameterMm: Math.min(spotMm, 0.7 * pitchMm) },
    { shape: 'gaussian', radiusMm: Math.min(spotMm, 0.5 * pitchMm) / 2 },
  ]);
}
