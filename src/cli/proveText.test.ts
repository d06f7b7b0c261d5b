import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { proveInstrument } from '../app/proveInstrument.ts';
import { proveText } from './proveText.ts';

const JETTY = new URL('../../examples/jetty/instrument.yaml', import.meta.url);

async function textWith(builds: number, more = ''): Promise<string> {
  const files = { readText: () => Promise.resolve(readFileSync(JETTY, 'utf8') + more) };
  return proveText(await proveInstrument(files as never, { path: 'vane.yaml', builds, seed: 1 }));
}

it('promises no more than one virtual build can tell', async () => {
  const text = await textWith(1);
  expect(text).toContain('YES as far as it goes, but 1 virtual build is too few to be sure.');
  expect(text).toContain('1 of 1 virtual builds');
  expect(text).not.toContain('will read right');
});

it('says a plain yes where there are builds enough', async () => {
  expect(await textWith(100)).toContain('YES, this design will read right.');
});

it('does not praise builds beside a no that is about something else', async () => {
  const text = await textWith(100, '\ncircuit:\n  resistorOhm: 200\n');
  expect(text).toContain('NO, this design will not read right.');
  expect(text).toContain('have their edges where the need wants them; the NO is for the reasons above');
  expect(text).not.toMatch(/As built.*meet the need/);
});
