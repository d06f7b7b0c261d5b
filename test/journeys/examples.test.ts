import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { filesIn, ownFolder, vanewright } from '../support/runCli.ts';
import { ROOT, textOf } from '../support/sourceFiles.ts';

const examples = readdirSync(join(ROOT, 'examples'));

describe.each(examples)('the example %s', (name) => {
  const file = `examples/${name}/instrument.yaml`;

  it('says that it is invented', () => {
    expect(textOf(file)).toMatch(/invented/i);
  });

  it('proves yes and is made, every file of it', () => {
    const folder = ownFolder();
    const said = vanewright('make', file, '--out', folder.path, '--builds', '200');
    expect([said.exit, said.err]).toEqual([0, '']);
    const made = filesIn(folder.path);
    expect(made).toEqual(
      expect.arrayContaining(['SHA256SUMS', 'build-sheet.html', 'code.csv', 'disc.svg', 'proof.json']),
    );
    expect(JSON.parse(readFileSync(join(folder.path, 'proof.json'), 'utf8'))).toMatchObject({
      verdict: 'yes',
    });
    folder.end();
  });
});

it('are the four that the docs tell of', () => {
  expect(examples.sort()).toEqual(['dome', 'jetty', 'sluice', 'tricolour']);
});
