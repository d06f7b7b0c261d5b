import { Eleventy } from '@11ty/eleventy';
import { fileURLToPath } from 'node:url';

/** Builds the pages, all but those of the library, into a folder. Run from the root of the repository. */
export async function buildSite(folder) {
  const configPath = fileURLToPath(new URL('eleventy.config.mjs', import.meta.url));
  const eleventy = new Eleventy('docs', folder, { configPath, quietMode: true });
  await eleventy.write();
}
