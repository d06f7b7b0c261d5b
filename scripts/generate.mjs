// Renews every file that is made from the code. CI runs it and fails when it changed anything.
import { mkdirSync, writeFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
if (spawnSync('npx', ['tsc', '-b'], { cwd: root, stdio: 'inherit' }).status !== 0) process.exit(1);

const { generatedFiles } = await import('../dist/app/generatedFiles.js');
const { nodeInstrumentFiles } = await import('../dist/adapters/nodeFiles/index.js');
const { commandReference } = await import('../dist/cli/commandReference.js');
const { httpReference } = await import('./httpReference.mjs');
const files = [
  ...(await generatedFiles(nodeInstrumentFiles, root)),
  { path: 'docs/reference/commands.md', content: commandReference() },
  { path: 'docs/reference/http.md', content: await httpReference(root) },
];
for (const { path, content } of files) {
  const goal = join(root, path);
  mkdirSync(dirname(goal), { recursive: true });
  writeFileSync(goal, content);
  process.stdout.write(`${path}\n`);
}
