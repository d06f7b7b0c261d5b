import { expect, it } from 'vitest';
import { problemsOf } from '../../../test/support/problemsOf.ts';
import { buildCode } from '../codes/index.ts';
import { planDisc } from '../disc/index.ts';
import { readInstrument } from './index.ts';

type Fields = { [name: string]: Fields | number | string | boolean };

function problemsIn(file: Fields) {
  const { instrument } = readInstrument(
    JSON.stringify({ vanewright: 1, name: 'boathouse jetty', ...file }),
    'f.json',
  );
  const { disc, need } = instrument;
  return problemsOf(() => planDisc(buildCode(disc.code, need.positions), disc));
}

/** The file with what a fix says written into it, and nothing else changed. */
function asFixed(file: Fields, fix: string): Fields {
  const fixed = structuredClone(file);
  for (const [, path, value] of fix.split(';')[0]!.matchAll(/((?:disc|need)[.][\w.]+) to ([\d.]+)/g)) {
    const steps = path!.split('.');
    const last = steps.pop()!;
    const group = steps.reduce<Fields>((at, step) => (at[step] ??= {}) as Fields, fixed);
    group[last] = Number(value);
  }
  return fixed;
}

const rough = { kind: 'fdm', edgeSdMm: 0.5, windowGrowthMm: 0.9, boreSdMm: 2 };

it.each<[string, Fields]>([
  ['a rough printer', { need: { positions: 32 }, disc: { diameterMm: 84, process: rough } }],
  ['a rough printer and few positions', { need: { positions: 8 }, disc: { diameterMm: 84, process: rough } }],
  [
    'walls too thin for a wide kerf',
    {
      need: { positions: 32 },
      disc: { diameterMm: 84, webMm: 1, process: { kind: 'laser', windowGrowthMm: 1 } },
    },
  ],
  [
    'a shaft too thick for its disc',
    {
      need: { positions: 16 },
      disc: { diameterMm: 60, bore: { shape: 'round', diameterMm: 40 }, process: { kind: 'fdm' } },
    },
  ],
  ['a disc too small', { need: { positions: 64 }, disc: { diameterMm: 30, process: { kind: 'fdm' } } }],
  [
    'a rim too thin',
    { need: { positions: 32 }, disc: { diameterMm: 84, rimMm: 0.5, process: { kind: 'fdm' } } },
  ],
])('a fix for %s, written into the file, is a disc that can be made', (_, file) => {
  const [first] = problemsIn(file);
  expect(first!.fix).toMatch(/ to /);
  expect(problemsIn(asFixed(file, first!.fix)), first!.fix).toEqual([]);
});

it('a disc without a rim has no index notch either, unless the file asks for one', () => {
  const bare = { need: { positions: 32 }, disc: { diameterMm: 84, rimMm: 0, process: { kind: 'fdm' } } };
  expect(problemsIn(bare)).toEqual([]);
  const notched = { ...bare, disc: { ...bare.disc, notch: { widthMm: 2 } } };
  expect(problemsIn(notched).map(({ code }) => code)).toEqual(['disc/notch-depth']);
});
