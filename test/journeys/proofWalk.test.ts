import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { COMMAND, ownFolder } from '../support/runCli.ts';
import { ROOT, textOf } from '../support/sourceFiles.ts';

const page = textOf('docs/proof.md');
const blocks = [...page.matchAll(/```sh\n([\s\S]*?)```/g)].map(([, text]) => text!);

describe('the walk of docs/proof.md', () => {
  const folder = ownFolder();
  afterAll(() => folder.end());

  /** Runs a block of the page as it is printed, but for where it writes. */
  function said(block: string): string {
    const script = block
      .replaceAll('npx vanewright', `node '${COMMAND}'`)
      .replaceAll('out/walk', join(folder.path, 'walk'));
    const { stdout, stderr } = spawnSync('bash', ['-c', script], { cwd: ROOT, encoding: 'utf8' });
    expect(stderr).toBe('');
    return stdout;
  }

  it('fails three times, each time nearer, and then reads', () => {
    expect(blocks).toHaveLength(5);
    const [binary, gray, quick, large] = blocks.slice(0, 4).map(said) as [string, string, string, string];
    expect(binary).toContain('NO, this design');
    expect(binary).toContain('1. Change one channel a step. Set disc.code to reflected-gray.');
    expect(gray).toContain('NO, this design');
    expect(gray).toContain('Use a sensor that is linear and quick.');
    expect(quick).toContain('NO, this design');
    expect(quick).toContain('607 of 1000');
    expect(quick).toMatch(/1[.] Make the disc larger[.].*: it reads right[.]/);
    expect(large).toContain('YES, this design');
    expect(large).toContain('999 of 1000');
  });

  it('ends with two files in the same builds', () => {
    expect(said(blocks[4]!)).toContain('500 virtual builds of each, drawn alike');
  });
});
