import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ownFolder } from '../support/runCli.ts';
import { ROOT } from '../support/sourceFiles.ts';

let folder: ReturnType<typeof ownFolder>;
let empty: string;

function ran(command: string, words: readonly string[], cwd: string): string {
  const { status, stdout, stderr } = spawnSync(command, words, { cwd, encoding: 'utf8' });
  expect({ status, stderr: status === 0 ? '' : `${stdout}${stderr}` }).toEqual({ status: 0, stderr: '' });
  return stdout;
}

beforeAll(() => {
  folder = ownFolder();
  empty = join(folder.path, 'empty');
  mkdirSync(empty);
  ran('npm', ['pack', '--ignore-scripts', '--pack-destination', folder.path], ROOT);
  const tarball = readdirSync(folder.path).find((name) => name.endsWith('.tgz'))!;
  writeFileSync(join(empty, 'package.json'), '{ "private": true }');
  const quiet = ['--no-audit', '--no-fund', '--prefer-offline', '--loglevel=error'];
  ran('npm', ['install', ...quiet, join(folder.path, tarball)], empty);
});
afterAll(() => folder.end());

describe('the packed package, installed in an empty folder', () => {
  const vanewright = (...words: string[]): string =>
    ran('npx', ['--no-install', 'vanewright', ...words], empty);

  it('holds the built program and no tests', () => {
    const inside = (
      readdirSync(join(empty, 'node_modules/vanewright'), { recursive: true }) as string[]
    ).filter((path) => !path.startsWith('node_modules'));
    expect(inside.filter((path) => /[.]test[.]|^src|^test|tsbuildinfo/.test(path))).toEqual([]);
    expect(existsSync(join(empty, 'node_modules/vanewright/dist/core/index.d.ts'))).toBe(true);
  });

  it('tells its version', () => {
    expect(vanewright('--version')).toMatch(/^\d+\.\d+\.\d+\n$/);
  });

  it('begins an instrument from an example and proves it', () => {
    vanewright('new', 'my-vane', '--from', 'jetty');
    expect(vanewright('prove', 'my-vane/instrument.yaml', '--builds', '200')).toContain(
      'YES, this design will read right.',
    );
  });

  it('serves a program that imports it', () => {
    const code = "import { meanHeading } from 'vanewright'; console.log(meanHeading([350, 10]).headingDeg);";
    expect(ran('node', ['--input-type=module', '-e', code], empty)).toBe('0\n');
  });
});
