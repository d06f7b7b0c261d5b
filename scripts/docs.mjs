// `npm run docs`: the docs as static pages in dist/docs, with the library's own under api/. Broken links fail.
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { buildSite } from '../docs/site/buildSite.mjs';
import { brokenLinks } from '../docs/site/brokenLinks.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const out = join(root, 'dist/docs');
rmSync(out, { recursive: true, force: true });
process.chdir(root);
await buildSite(out);
const { status } = spawnSync(
  'npx',
  ['typedoc', '--options', 'docs/site/typedoc.json', '--out', join(out, 'api')],
  {
    stdio: 'inherit',
  },
);
const broken = brokenLinks(out);
for (const line of broken) process.stderr.write(`${line}\n`);
process.exitCode = status === 0 && broken.length === 0 ? 0 : 1;
