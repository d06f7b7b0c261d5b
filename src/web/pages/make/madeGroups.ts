import type { OutputFile } from '../../../ports/index.ts';

/** Files of one part of a build. */
export interface MadeGroup {
  /** Folder, or `''` for the files at the top. */
  readonly folder: string;
  readonly files: readonly OutputFile[];
}

/** Files by folder, in the order in which they were made. */
export function madeGroups(files: readonly OutputFile[]): MadeGroup[] {
  const groups = new Map<string, OutputFile[]>();
  for (const file of files) {
    const folder = file.path.includes('/') ? file.path.slice(0, file.path.indexOf('/')) : '';
    groups.set(folder, [...(groups.get(folder) ?? []), file]);
  }
  return [...groups].map(([folder, inside]) => ({ folder, files: inside }));
}

/** Length of a file. [bytes] */
export function byteLength({ content }: OutputFile): number {
  return typeof content === 'string' ? new TextEncoder().encode(content).length : content.length;
}

const shownTypes: Readonly<Record<string, string>> = {
  html: 'text/html',
  svg: 'image/svg+xml',
  pdf: 'application/pdf',
  txt: 'text/plain',
  md: 'text/plain',
  csv: 'text/plain',
  json: 'text/plain',
  ino: 'text/plain',
  cpp: 'text/plain',
  h: 'text/plain',
  py: 'text/plain',
};

/** How a browser shows a file; `null` where it can only be saved. */
export function shownType(path: string): string | null {
  return shownTypes[path.slice(path.lastIndexOf('.') + 1)] ?? null;
}
