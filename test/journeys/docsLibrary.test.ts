import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { build } from 'vite';
import { shownSnippets } from '../support/docSnippets.ts';
import { ownFolder } from '../support/runCli.ts';
import { ROOT } from '../support/sourceFiles.ts';

const folder = ownFolder();
afterAll(() => folder.end());

/** What a program that imports one name from the package carries in the end, all that it needs with it. */
async function carriedBy(name: string): Promise<{ bytes: number; steps: string[] }> {
  const entry = join(folder.path, `${name}.js`);
  writeFileSync(entry, `export { ${name} } from '${join(ROOT, 'dist/core/index.js')}';\n`);
  const built = await build({
    configFile: false,
    logLevel: 'silent',
    build: { write: false, target: 'es2022', lib: { entry, formats: ['es'] }, minify: true },
  });
  const outputs = Array.isArray(built) ? built : [built];
  const chunks = outputs
    .flatMap((one) => ('output' in one ? one.output : []))
    .flatMap((part) => (part.type === 'chunk' ? [part] : []));
  const kept = chunks.flatMap(({ modules }) =>
    Object.entries(modules).flatMap(([path, { renderedLength }]) => (renderedLength > 0 ? [path] : [])),
  );
  const steps = kept.flatMap((path) => /dist\/core\/(\w+)\//.exec(path)?.[1] ?? []);
  return {
    bytes: chunks.reduce((sum, { code }) => sum + code.length, 0),
    steps: [...new Set(steps)].sort(),
  };
}

describe('the library page', () => {
  it.each(shownSnippets('docs/library.md'))('has a snippet that prints what it shows: $name', (shown) => {
    expect(shown.lines.length).toBeGreaterThan(0);
    const { status, stdout, stderr } = spawnSync('node', ['--input-type=module', '-e', shown.code], {
      cwd: ROOT,
      encoding: 'utf8',
    });
    expect({ status, stderr, printed: stdout.trimEnd().split('\n') }).toEqual({
      status: 0,
      stderr: '',
      printed: shown.lines,
    });
  });
});

describe('a program that takes one name of the library', () => {
  it('gets the mean of headings in less than 4 kB', async () => {
    const { bytes, steps } = await carriedBy('meanHeading');
    expect(steps).toEqual(['error', 'units', 'wind']);
    expect(bytes).toBeGreaterThan(200);
    expect(bytes).toBeLessThan(4000);
  });

  it('gets the codes without drawings, solids or the instrument file', async () => {
    expect((await carriedBy('buildCode')).steps).toEqual(['codes', 'error', 'units']);
  });
});
