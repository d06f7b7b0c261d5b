import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { builtBy, designOf, recordedText, turnedBy, twinFile } from '../support/fitTwin.ts';
import { draws } from '../support/handTurn.ts';
import { filesIn, ownFolder, vanewright } from '../support/runCli.ts';
import { textOf } from '../support/sourceFiles.ts';

const isOutput = new Ajv2020({ allowUnionTypes: true }).compile(
  JSON.parse(textOf('schema/output.schema.json')),
);

/** Invented: two wires swapped, one channel the wrong way round, a dim lamp, the bore 0.3 mm off. */
function faultyTurn(): string {
  const random = draws(20261125);
  const build = builtBy(designOf(twinFile()), {
    random,
    columns: [0, 2, 1, 3, 4],
    inverted: [3],
    litCounts: { 4: 420 },
    boreMm: [0.3, 0],
    noiseCounts: 2,
  });
  const hand = (turns: number) => ({ turns, degPerS: 40, change: 0.3, phase: 0.7 });
  return recordedText(build, turnedBy(build, [hand(2.3)], 10), random);
}

describe('vanewright fit', () => {
  let folder: ReturnType<typeof ownFolder>;
  let file: string;
  let turn: string;
  beforeAll(() => {
    folder = ownFolder();
    file = join(folder.path, 'instrument.yaml');
    turn = join(folder.path, 'turn_ccw.csv');
    writeFileSync(file, twinFile());
    writeFileSync(turn, faultyTurn());
  });
  afterAll(() => {
    folder.end();
  });

  it('explains the build, and changes nothing unless it is asked to', () => {
    const { out } = vanewright('fit', file, turn);
    expect(out).toContain('What is wrong, worst first');
    for (const word of [/swapped/i, /reads the other way round/i, /dim light/i, /bore/i])
      expect(out).toMatch(word);
    expect(readFileSync(file, 'utf8')).toBe(twinFile());
  });

  it('prints one document that the published schema describes', () => {
    const said = vanewright('fit', file, turn, '--json');
    const found = JSON.parse(said.out) as Record<string, unknown>;
    expect(isOutput(found), JSON.stringify(isOutput.errors)).toBe(true);
    expect(found).toMatchObject({ command: 'fit', ok: said.exit === 0, isWritten: false });
  });

  it('writes certificate and program, and the table with the comments kept', () => {
    const out = join(folder.path, 'out');
    const { out: text } = vanewright('fit', file, turn, '--write', '--out', out);
    expect(text).toContain(`Wrote the table to ${file}.`);
    expect(filesIn(out)).toEqual([
      'SHA256SUMS',
      'certificate.html',
      'certificate.json',
      'certificate.pdf',
      'program/invented_twin/invented_twin.ino',
    ]);
    const written = readFileSync(file, 'utf8');
    expect(written).toContain('# of a vane on a boathouse jetty');
    expect(written).toContain('asBuilt:');
    expect(vanewright('prove', file).exit).toBeLessThan(2);
    expect(vanewright('fit', file, turn).out).not.toContain('which matters');
  });

  it('says what is missing when the recording is no full turn', () => {
    const short = join(folder.path, 'short.csv');
    writeFileSync(short, faultyTurn().split('\n').slice(0, 200).join('\n'));
    const { exit, out } = vanewright('fit', file, short);
    expect(exit).toBe(1);
    expect(out).toContain('What this recording cannot tell');
    expect(out).toContain('record next:');
  });

  it.each([
    ['a recording that is not there', 'nowhere.csv', 'files/not-found'],
    ['rubbish', 'rubbish.csv', 'fit/'],
  ])('refuses %s', (_, name, code) => {
    writeFileSync(
      join(folder.path, 'rubbish.csv'),
      Buffer.from(Array.from({ length: 4000 }, (_, i) => (i * 7919) % 251)),
    );
    const { exit, err } = vanewright('fit', file, join(folder.path, name));
    expect([exit, err]).toEqual([2, expect.stringContaining(code)]);
  });
});
