import { VanewrightError } from '../../core/error/index.ts';
import type { InstrumentFiles, OutputFile, OutputFolder } from '../../ports/index.ts';

/** Files of the project as the page holds them, by path. */
export type FileTexts = Readonly<Record<string, string | Uint8Array>>;

function missing(path: string): VanewrightError {
  return new VanewrightError({
    code: 'files/not-found',
    what: 'There is no such file in the project.',
    where: path,
    got: 'nothing',
    allowed: 'a file of the project',
    fix: 'Add the file to the project, or name another.',
  });
}

/**
 * Instrument files that lie in memory; nothing is ever written.
 *
 * @param changedAt - When each was last changed, where that is known. ISO 8601, UTC
 */
export function memoryFiles(
  texts: FileTexts,
  changedAt: Readonly<Record<string, string>> = {},
): InstrumentFiles {
  const contentOf = (path: string): string | Uint8Array => {
    const content = Object.hasOwn(texts, path) ? texts[path] : undefined;
    if (content === undefined) throw missing(path);
    return content;
  };
  return {
    async readText(path) {
      const content = contentOf(path);
      return typeof content === 'string'
        ? content
        : new TextDecoder('utf-8', { fatal: true }).decode(content);
    },
    async readBytes(path) {
      const content = contentOf(path);
      return typeof content === 'string' ? new TextEncoder().encode(content) : content;
    },
    async changedAt(path) {
      return changedAt[path] ?? '1970-01-01T00:00:00.000Z';
    },
    async replaceText(path) {
      throw missing(path);
    },
  };
}

/** The same files, with what is put in the place of one kept beside. */
export function keepingText(files: InstrumentFiles) {
  const written: Record<string, string> = {};
  const keeping: InstrumentFiles = {
    ...files,
    async replaceText(path, text) {
      written[path] = text;
    },
  };
  return { files: keeping, written };
}

/** A folder that only remembers what was written to it. */
export function collectingFolder(): OutputFolder & { readonly files: OutputFile[] } {
  const files: OutputFile[] = [];
  return {
    files,
    async write(_folder, written) {
      files.push(...written);
      return { paths: written.map(({ path }) => path), removed: [], kept: [], setAside: [], left: [] };
    },
  };
}
