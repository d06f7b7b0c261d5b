// How long many virtual builds take, beside a scan of the light at every hundredth of a degree.
import { exactTurn, virtualBuilds } from '../src/core/proof/index.ts';
import { seededRandom } from '../src/core/units/index.ts';
import { apartDeg, denseCounts, denseTurn, type DenseBuild } from '../test/support/denseTurn.ts';
import { handDisc } from '../test/support/handDisc.ts';
import { handHead, LINEAR_HEAD } from '../test/support/handHead.ts';

type Report = (row: { name: string; value: number; unit: string }) => void;

const BUILDS = 1_000;
const SCANNED_BUILDS = 5;
const SCAN_DEG = 0.01;
const REPEATS = 9;

/** Reflected Gray, 32 positions on 5 tracks, with every cause of error at work. */
const head = handHead(handDisc({ process: { edgeSdMm: 0.1, boreSdMm: 0.1, windowGrowthMm: 0.1 } }), {
  spec: { tangentialSdMm: 0.1, radialSdMm: 0.1, detector: { ...LINEAR_HEAD.detector, spread: 0.2 } },
  circuit: { hysteresisCounts: null, noiseCounts: 1, resistorTolerancePercent: 5 },
});

function millisecondsOf(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

function middle(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[(values.length - 1) / 2]!;
}

function buildsMs(builds: number): number {
  return millisecondsOf(() => virtualBuilds(head, { builds, seed: 1, accuracyDeg: 8 }));
}

/** Time of a thousand builds, and how many times as long four thousand take, side by side so that both meet the same load. */
function growth(): { thousandMs: number; times: number } {
  buildsMs(4 * BUILDS);
  const pairs = Array.from({ length: REPEATS }, () => [buildsMs(BUILDS), buildsMs(4 * BUILDS)] as const);
  return {
    thousandMs: middle(pairs.map(([thousand]) => thousand)),
    times: middle(pairs.map(([thousand, four]) => four / thousand)),
  };
}

/** One build with faults of the same size, in the words of both ways of turning it. */
function faultyBuild(seed: number): { faults: Parameters<typeof exactTurn>[1]; scan: DenseBuild } {
  const random = seededRandom(seed);
  const edges = new Map<string, number>();
  const edgeMm = (track: number, edgeDeg: number): number => {
    const name = `${track}:${edgeDeg.toFixed(6)}`;
    const known = edges.get(name) ?? 0.1 * random.normal();
    edges.set(name, known);
    return known;
  };
  const boreMm = [0.1 * random.normal(), 0.1 * random.normal()] as const;
  const alongMm = head.channels.map(() => 0.1 * random.normal());
  const acrossMm = head.channels.map(() => 0.1 * random.normal());
  const growth = head.disc.spec.process.windowGrowthMm / 2;
  const begins = (track: number, edgeDeg: number): boolean =>
    head.disc.tracks[track]!.windows.some((window) => apartDeg(window.fromDeg, edgeDeg) < 1e-9);
  return {
    faults: { edgeMm, boreMm, alongMm, acrossMm },
    scan: {
      moveMm: (track, edgeDeg) => edgeMm(track, edgeDeg) + (begins(track, edgeDeg) ? -growth : growth),
      boreMm,
      alongMm: (channel) => alongMm[channel]!,
      acrossMm: (channel) => acrossMm[channel]!,
    },
  };
}

/** Time of a scan of one build, both ways round, and how far its switches lie from those of the closed forms. */
function scanned(seed: number): { ms: number; apartDeg: number } {
  const { faults, scan } = faultyBuild(seed);
  const exact = exactTurn(head, faults);
  let worst = 0;
  const ms = millisecondsOf(() => {
    const counts = denseCounts(head, scan, SCAN_DEG);
    for (const sense of ['growing', 'falling'] as const) {
      const starts = exact[sense].map((stretch) => stretch.fromDeg);
      for (const { angleDeg } of denseTurn(head, counts, sense).switches) {
        worst = Math.max(worst, Math.min(...starts.map((start) => apartDeg(start, angleDeg))));
      }
    }
  });
  return { ms, apartDeg: worst };
}

/** Reports the time of many builds, its growth with their number, and its ratio to a dense scan. */
export async function run(report: Report): Promise<void> {
  const { thousandMs, times } = growth();
  const scans = Array.from({ length: SCANNED_BUILDS }, (_, seed) => scanned(seed));
  const scanMs = middle(scans.map(({ ms }) => ms));
  const worst = Math.max(...scans.map(({ apartDeg: apart }) => apart));
  report({
    name: '1,000 builds, 32 positions on 5 tracks, both ways round',
    value: round(thousandMs),
    unit: 'ms',
  });
  report({ name: 'one build by a scan every 0.01 degree', value: round(scanMs), unit: 'ms' });
  report({
    name: 'scan of one build / one virtual build',
    value: round(scanMs / (thousandMs / BUILDS)),
    unit: 'x',
  });
  report({
    name: 'farthest that the two put one switch apart',
    value: Number(worst.toPrecision(2)),
    unit: 'deg',
  });
  report({ name: '4,000 builds / 1,000 builds', value: round(times), unit: 'x' });
}

function round(value: number): number {
  return Number(value.toPrecision(3));
}
