// `npm test`: the Debian tools first, then the build, then every test; nothing is skipped.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { toolsAreThere } from './installTools.mjs';

function runTests(words) {
  const folder = mkdtempSync(join(tmpdir(), 'vanewright-test-'));
  const report = join(folder, 'report.json');
  try {
    const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
    const { status } = spawnSync('npx', ['vitest', 'run', ...reporters, ...words], { stdio: 'inherit' });
    const { numPassedTests, numFailedTests, numPendingTests, numTodoTests } = JSON.parse(
      readFileSync(report, 'utf8'),
    );
    const skipped = numPendingTests + numTodoTests;
    process.stdout.write(`${numPassedTests} passed, ${numFailedTests} failed, ${skipped} skipped\n`);
    if (skipped > 0) process.stderr.write('A skipped test proves nothing: mend it or take it away.\n');
    return status === 0 && skipped === 0 && numPassedTests > 0 ? 0 : 1;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

if (!toolsAreThere()) process.exit(1);
const build = spawnSync('npm', ['run', '--silent', 'build'], { stdio: 'inherit' });
process.exit(build.status === 0 ? runTests(process.argv.slice(2)) : 1);
