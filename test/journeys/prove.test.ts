import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { readFileSync, writeFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { nodeInstrumentFiles } from '../../src/adapters/nodeFiles/index.ts';
import { readDesign } from '../../src/app/design.ts';
import { virtualBuilds } from '../../src/core/proof/index.ts';
import { COMMAND, ownFolder, vanewright } from '../support/runCli.ts';
import { ROOT, textOf } from '../support/sourceFiles.ts';

const JETTY = join(ROOT, 'examples/jetty/instrument.yaml');
const isOutput = new Ajv2020({ allowUnionTypes: true }).compile(
  JSON.parse(textOf('schema/output.schema.json')),
);

function document(...words: string[]): Record<string, unknown> {
  const said = vanewright(...words, '--json');
  const found = JSON.parse(said.out) as Record<string, unknown>;
  expect(isOutput(found), JSON.stringify(isOutput.errors)).toBe(true);
  expect(found.ok).toBe(said.exit === 0);
  return found;
}

describe('vanewright prove', () => {
  let folder: ReturnType<typeof ownFolder>;
  beforeAll(() => {
    folder = ownFolder();
  });
  afterAll(() => {
    folder.end();
  });
  const jettyWith = (name: string, from: RegExp, to: string): string => {
    const path = join(folder.path, name);
    const text = textOf('examples/jetty/instrument.yaml');
    writeFileSync(path, text.replace(from, to));
    expect(readFileSync(path, 'utf8')).not.toBe(text);
    return path;
  };

  it('says yes to the jetty vane in Gray and explains the no of natural binary', () => {
    const { exit, out } = vanewright('prove', JETTY);
    expect(exit).toBe(0);
    expect(out).toContain('YES, this design will read right.');
    expect(out).toContain('The same disc in natural-binary');
  });

  it('says no to the same disc in natural binary, with the reason', () => {
    const { exit, out } = vanewright('prove', jettyWith('binary.yaml', /code: \S+/, 'code: natural-binary'));
    expect(exit).toBe(1);
    expect(out).toContain('NO, this design will not read right.');
    expect(out).toContain('16 of 32 boundaries change two channels or more at once');
    expect(out).toContain('No tolerance helps');
  });

  it('prints one document that the published schema describes, and the same one each time', () => {
    const first = document('prove', JETTY, '--builds', '200', '--seed', '5');
    expect(document('prove', JETTY, '--builds', '200', '--seed', '5')).toEqual(first);
    expect(first.ok).toBe(true);
  });

  it('makes many builds in many hands with the numbers of one', async () => {
    const { proof } = document('prove', JETTY, '--builds', '9000', '--seed', '3') as {
      proof: { builds: object };
    };
    const { head, instrument } = await readDesign(nodeInstrumentFiles, JETTY);
    const request = { builds: 9_000, seed: 3, accuracyDeg: instrument.need.accuracyDeg };
    expect(proof.builds).toEqual(JSON.parse(JSON.stringify(virtualBuilds(head, request))));
  });

  it('reads the three colours of the winch drum', () => {
    const { exit, out } = vanewright('prove', join(ROOT, 'examples/tricolour/instrument.yaml'));
    expect(exit).toBe(0);
    expect(out).toContain('red, green and blue counts');
  });

  it('compares two designs in the same builds, and says which is better', () => {
    const binary = jettyWith('rival.yaml', /code: \S+/, 'code: natural-binary');
    const compared = document('prove', JETTY, '--against', binary, '--builds', '300');
    expect(compared.comparison).toMatchObject({ onlyFirstGood: 300, onlySecondGood: 0 });
    expect(vanewright('prove', binary, '--against', JETTY, '--builds', '300').exit).toBe(1);
  });

  it('gives a full report of a design that cannot be read, and says why', () => {
    const blind = jettyWith('blind.yaml', /darkOhm: \S+/, 'darkOhm: 2100');
    const report = document('prove', blind, '--builds', '50') as {
      ok: boolean;
      proof: { reasons: string[]; budget: object };
    };
    expect(report.ok).toBe(false);
    expect(report.proof.reasons[0]).toContain('look too much alike');
    const { out } = vanewright('prove', blind, '--builds', '50');
    expect(out).not.toContain('NaN');
    expect(out).not.toContain('Infinity');
  });

  it('draws edges for a photoresistor where asked', () => {
    const plain = document('prove', JETTY, '--builds', '200') as {
      proof: { exactTurn: { errors: { maxDeg: number } } };
    };
    const path = jettyWith('corrected.yaml', /^head:$/m, 'head:\n  edgeCorrection: drawn');
    const corrected = document('prove', path, '--builds', '200') as typeof plain;
    const over = ({ proof }: typeof plain): number => proof.exactTurn.errors.maxDeg - 5.625;
    expect(over(corrected)).toBeLessThan(0.05 * over(plain));
  });

  it('prints refusals in the same schema, every problem with its place', () => {
    const bad = jettyWith('bad.yaml', /diameterMm: 90/, 'diametreMm: 90');
    const { problems } = document('prove', bad) as { problems: { where: string; fix: string }[] };
    expect(problems.some(({ where }) => /bad\.yaml:\d+:\d+/.test(where))).toBe(true);
    expect(JSON.stringify(problems)).toContain('diameterMm');
  });

  it.each([
    ['a file that is not there', 'nowhere.yaml', 'files/not-found'],
    ['a folder', '.', 'files/not-readable'],
  ])('refuses %s', (_, name, code) => {
    const { exit, err } = vanewright('prove', join(folder.path, name));
    expect([exit, err]).toEqual([2, expect.stringContaining(code)]);
  });

  it('refuses a file of gigabytes without reading it all', () => {
    const { exit, err } = vanewright('prove', '/dev/zero');
    expect([exit, err]).toEqual([2, expect.stringContaining('files/too-large')]);
  });

  it('refuses bytes that are not text', () => {
    const path = join(folder.path, 'binary.yaml');
    writeFileSync(path, Buffer.from([0xff, 0xfe, 0x80, 0x81]));
    const { exit, err } = vanewright('prove', path);
    expect([exit, err]).toEqual([2, expect.stringContaining('files/not-text')]);
  });

  it.each([
    ['--builds', '0'],
    ['--builds', 'many'],
    ['--seed', '-1'],
    ['--sead', '1'],
  ])('refuses %s %s', (option, value) => {
    const { exit, err } = vanewright('prove', JETTY, option, value);
    expect(exit).toBe(2);
    expect(err).toContain(option);
  });
});

describe('vanewright new', () => {
  it('writes a commented file that proves clean, and never replaces one', () => {
    const folder = ownFolder();
    const goal = join(folder.path, 'my vane');
    expect(document('new', goal).ok).toBe(true);
    expect(readFileSync(join(goal, 'instrument.yaml'), 'utf8')).toContain('#');
    expect(document('prove', join(goal, 'instrument.yaml')).ok).toBe(true);
    const { exit, err } = vanewright('new', goal);
    expect([exit, err]).toEqual([2, expect.stringContaining('files/already-there')]);
    folder.end();
  });
});

describe('the command itself', () => {
  it('says in one document what it could not read of the command', () => {
    for (const words of [['make', JETTY], ['prove', JETTY, '--builds', 'x'], ['prove'], ['proove'], []]) {
      const { problems } = document(...words) as { problems: { code: string }[] };
      expect(problems[0]?.code).toBe('cli/usage');
    }
  });

  it('tells of a full disk behind its answer, and is quiet when the reader has gone', () => {
    const run = (tail: string) =>
      spawnSync('bash', ['-c', `node "$0" prove "$1" ${tail}`, COMMAND, JETTY], { encoding: 'utf8' });
    expect(run('> /dev/full')).toMatchObject({
      status: 74,
      stderr: 'The answer could not be printed: ENOSPC.\n',
    });
    expect(run('| true').stderr).toBe('');
  });

  it('ends at once on Ctrl-C while it calculates', () => {
    const { status } = spawnSync(
      'timeout',
      ['-s', 'INT', '2', 'node', COMMAND, 'prove', JETTY, '--builds', '1000000'],
      { timeout: 20_000 },
    );
    expect(status).toBe(124); // timeout's own status: the command ended at the signal
  });

  it('refuses an empty folder instead of taking the one it stands in', () => {
    expect(vanewright('make', JETTY, '--out', '')).toMatchObject({
      exit: 2,
      err: expect.stringContaining('path of a folder'),
    });
    expect(vanewright('new', ' ').exit).toBe(2);
  });

  it('keeps bytes that steer a terminal out of its messages', () => {
    expect(vanewright('prove', 'no\u001b[2Jwhere.yaml').err).not.toContain('\u001b');
  });

  it('prints help and version, and asks for a command where there is none', () => {
    expect(vanewright('--help')).toMatchObject({ exit: 0, out: expect.stringContaining('prove') });
    expect(vanewright('--version').out.trim()).toMatch(/^\d+\.\d+\.\d+$/);
    expect(vanewright().exit).toBe(2);
    expect(vanewright('proove', JETTY).exit).toBe(2);
  });
});
