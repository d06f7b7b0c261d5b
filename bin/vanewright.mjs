#!/usr/bin/env node
import { existsSync } from 'node:fs';

const main = new URL('../dist/cli/main.js', import.meta.url);
if (existsSync(main)) {
  const { run } = await import(main.href);
  process.exitCode = await run(process.argv.slice(2));
} else {
  process.stderr.write('vanewright is not built yet. Run: npm ci (or npm run build), then try again.\n');
  process.exitCode = 2;
}
