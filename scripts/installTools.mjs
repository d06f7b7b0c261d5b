import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { debianTools } from './debianTools.mjs';

const missing = () => debianTools.filter((tool) => !existsSync(tool.proof));

function install(packages) {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const run = (...args) =>
    spawnSync('apt-get', args, { stdio: ['ignore', 'ignore', 'inherit'], env }).status === 0;
  run('update', '-q');
  return run('install', '-q', '-y', '--no-install-recommends', ...packages);
}

/** Makes sure the Debian tools are there: installs them as root, else names them and gives `false`. */
export function toolsAreThere() {
  const wanted = missing();
  if (wanted.length === 0) return true;
  const packages = wanted.map((tool) => tool.package);
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    process.stderr.write(`Installing what the tests need: ${packages.join(' ')}\n`);
    if (install(packages) && missing().length === 0) return true;
  }
  process.stderr.write('The tests need these Debian packages:\n');
  for (const tool of missing()) process.stderr.write(`  ${tool.package}: ${tool.why}\n`);
  process.stderr.write(`Install them, then try again:\n  sudo apt-get install ${packages.join(' ')}\n`);
  return false;
}
