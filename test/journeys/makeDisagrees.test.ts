import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import { problemsOfPromise } from '../support/problemsOf.ts';
import { ownFolder } from '../support/runCli.ts';
import { ROOT } from '../support/sourceFiles.ts';
import { nodeFonts, nodeInstrumentFiles, nodeOutputFolder } from '../../src/adapters/nodeFiles/index.ts';
import type { DiscPlan } from '../../src/core/disc/index.ts';
import { makeInstrument } from '../../src/app/makeInstrument.ts';

// A pen gone wrong: the drawing for a cutter lacks the innermost track.
vi.mock('../../src/core/make/dxf/discDxf.ts', async (original) => {
  const { discDxf } = await original<{ discDxf(plan: DiscPlan): string }>();
  return { discDxf: (plan: DiscPlan) => discDxf({ ...plan, tracks: plan.tracks.slice(1) }) };
});

let folder: ReturnType<typeof ownFolder>;
beforeAll(() => {
  folder = ownFolder();
});
afterAll(() => {
  folder.end();
});

it('saves a drawing of the places where a file shows another disc, and nothing else', async () => {
  const out = join(folder.path, 'out');
  const ports = { files: nodeInstrumentFiles, fonts: nodeFonts, output: nodeOutputFolder };
  const path = join(ROOT, 'examples/jetty/instrument.yaml');
  const request = { path, out, builds: 10, seed: 1, paper: 'a4', only: null } as const;
  const problems = await problemsOfPromise(makeInstrument(ports, request, new AbortController().signal));
  expect(problems.map(({ code, where }) => [code, where])).toEqual([['make/file-disagrees', 'disc.dxf']]);
  expect(problems[0]!.fix).toContain(`The drawing ${out}/disc-fault.svg shows the place.`);
  expect(readdirSync(out)).toEqual(['disc-fault.svg']);
  const svg = readFileSync(join(out, 'disc-fault.svg'), 'utf8');
  const rings = [...svg.matchAll(/<circle cx="([-\d.]+)" cy="([-\d.]+)"/g)].map(([, x, y]) =>
    Math.hypot(Number(x), Number(y)),
  );
  // The innermost track was left out: every ring stands on its middle, 15 mm from the axis and half of 4.56 mm more.
  expect(rings.length).toBeGreaterThan(3);
  for (const radius of rings) expect(radius).toBeCloseTo(17.28, 3);
});
