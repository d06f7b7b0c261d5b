// Takes the examples through the whole job, each command as a maker would type it.
// Usage: node scripts/exampleJobs.mjs [FOLDER] [EXAMPLE...]; without names, all of them into out/examples.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const command = join(root, 'bin/vanewright.mjs');
const { exampleNames } = await import('../dist/app/api.js');

// Enough virtual builds to see a verdict; a maker takes the thousand of the default.
const BUILDS = ['--builds', '200'];

/** The steps of one example in the order of the job; a step without its data is left out, and said so. */
function stepsOf(name, folder) {
  const data = join(root, 'examples', name);
  const file = join(folder, 'instrument.yaml');
  const store = join(folder, 'record');
  const turns = readdirSync(data)
    .filter((path) => /^turn-.*[.]csv$/.test(path))
    .map((path) => join(data, path));
  const swing = join(data, 'release.csv');
  return [
    ['new', folder, '--from', name],
    ['weigh', file],
    ['prove', file, ...BUILDS],
    ['make', file, '--out', join(folder, 'made'), ...BUILDS],
    turns.length > 0 && [
      'fit',
      file,
      ...turns,
      '--starts-at-deg',
      '0',
      '--write',
      '--out',
      join(folder, 'fitted'),
    ],
    existsSync(swing) && [
      'fit',
      'release',
      file,
      '--swing',
      swing,
      '--speed-m-per-s',
      '5',
      '--resolution-deg',
      '0.2',
    ],
    ['log', file, '--from', join(data, 'log.csv'), '--store', store],
    ['review', file, '--store', store, '--out', join(folder, 'review')],
    [
      ...['publish', file, '--out', join(folder, 'kit'), ...BUILDS, '--licence', 'CC-BY-4.0', 'MIT'],
      ...(turns.length > 0 ? ['--fit-folder', join(folder, 'fitted')] : []),
    ],
  ].filter(Boolean);
}

const [out = join(root, 'out/examples'), ...names] = process.argv.slice(2);
let failed = 0;
for (const name of names.length > 0 ? names : exampleNames) {
  for (const words of stepsOf(name, join(out, name))) {
    const { status, stderr } = spawnSync('node', [command, ...words], { cwd: root, encoding: 'utf8' });
    process.stdout.write(`${status === 0 ? 'ok    ' : `exit ${status}`} vanewright ${words.join(' ')}\n`);
    if (status === 0) continue;
    process.stderr.write(stderr);
    failed += 1;
  }
}
process.exitCode = failed === 0 ? 0 : 1;
