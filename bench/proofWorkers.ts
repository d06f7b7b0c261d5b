// 100,000 virtual builds in worker threads, two beside one; the numbers must be those of one thread without any.
import { setTimeout } from 'node:timers/promises';
import type { nodeBuildWorkers as NodeBuildWorkers } from '../src/adapters/nodeWorkers/index.ts';
import { buildsInParallel } from '../src/app/buildsInParallel.ts';
import { virtualBuilds } from '../src/core/proof/index.ts';
import { buildCode } from '../src/core/codes/index.ts';
import { planDisc, processDefaults } from '../src/core/disc/index.ts';
import { handHead, LINEAR_HEAD } from '../test/support/handHead.ts';

// Threads load their own file, which only the build has in a language that they speak.
const { nodeBuildWorkers } = (await import(
  new URL('../dist/adapters/nodeWorkers/index.js', import.meta.url).href
)) as { nodeBuildWorkers: typeof NodeBuildWorkers };

type Report = (row: { name: string; value: number; unit: string }) => void;

const BUILDS = 100_000;
const REQUEST = { builds: BUILDS, seed: 1, accuracyDeg: 8 };

const disc = planDisc(buildCode('reflected-gray', 32), {
  code: 'reflected-gray',
  codeFile: null,
  codeOptions: {},
  diameterMm: 84,
  bore: { shape: 'round', diameterMm: 5 },
  hubDiameterMm: 30,
  thicknessMm: 2,
  webMm: 1.2,
  rimMm: 2.4,
  finest: 'outside',
  windowLevel: 1,
  notch: { widthMm: 2, depthMm: 1.2 },
  process: processDefaults.fdm,
});
const head = handHead(disc, {
  spec: { tangentialSdMm: 0.1, radialSdMm: 0.1, detector: { ...LINEAR_HEAD.detector, spread: 0.2 } },
  circuit: { hysteresisCounts: null, noiseCounts: 1, resistorTolerancePercent: 5 },
});

/** Time of all builds by so many hands, once they are warm. [ms] */
async function timeOf(hands: number): Promise<{ ms: number; isSame: boolean }> {
  const workers = nodeBuildWorkers(hands);
  try {
    const warm = await buildsInParallel(workers, head, { ...REQUEST, builds: 20_000 });
    await setTimeout(10);
    const start = performance.now();
    const built = await buildsInParallel(workers, head, REQUEST);
    const ms = performance.now() - start;
    return { ms, isSame: warm.builds === 20_000 && JSON.stringify(built) === JSON.stringify(alone) };
  } finally {
    await workers.close();
  }
}

const alone = virtualBuilds(head, REQUEST);

/** Reports the time of one and of two hands, and whether they agree to the last bit. */
export async function run(report: Report): Promise<void> {
  const one = await timeOf(1);
  const two = await timeOf(2);
  report({ name: '100,000 builds by one thread', value: Number(one.ms.toPrecision(3)), unit: 'ms' });
  report({ name: 'one thread / two threads', value: Number((one.ms / two.ms).toPrecision(3)), unit: 'x' });
  report({
    name: 'numbers equal to the last bit',
    value: Number(one.isSame && two.isSame),
    unit: '(1 = yes)',
  });
}
