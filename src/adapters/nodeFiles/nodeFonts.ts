import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Fonts } from '../../ports/index.ts';

/** The font that came with the program's own packages. */
export const nodeFonts: Fonts = {
  sans: () => readFile(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf')),
};
