import { throwIfAny, type Problem } from '../../error/index.ts';
import type { MadeFile } from '../madeFile.ts';
import { drawingProblems } from './papers/drawingProblems.ts';
import { netlistProblems } from './papers/netlistProblems.ts';
import { solidProblems, stlFacts } from './papers/solidProblems.ts';
import { tableProblems } from './papers/tableProblems.ts';
import { wordProblems, type WantedWords } from './papers/wordProblems.ts';
import { zipProblems } from './papers/zipProblems.ts';

/** What the files of a result should say. */
export interface WantedBundle extends WantedWords {
  /** Channels of the head. [-], whole */
  readonly channels: number;
}

/**
 * Reads a whole result back, file by file and against each other.
 *
 * Solids are closed and equal in both formats; tables, pages and programs give every position its word; masses are those of
 * the solids; the netlist can be wired; drawings are sound and of true size; the zip holds it all with right checksums.
 *
 * @param files - Everything made; the disc's own files are decoded by `readBack`.
 * @param wanted - What they should say.
 * @check src/core/make/readBack/readBundle.test.ts (every kind of file damaged once)
 */
export function bundleProblems(files: readonly MadeFile[], wanted: WantedBundle): Problem[] {
  const solids = stlFacts(files);
  return [
    ...solidProblems(files, solids),
    ...wordProblems(files, wanted),
    ...tableProblems(files, solids),
    ...drawingProblems(files),
    ...files.flatMap((file) =>
      file.path.endsWith('netlist.txt') && typeof file.content === 'string'
        ? netlistProblems(file.path, file.content, wanted.channels)
        : [],
    ),
    ...files.flatMap((file, at) => (file.path.endsWith('.zip') ? zipProblems(file, files.slice(0, at)) : [])),
  ];
}

/** Throws where a file of a result does not say what it should. @throws `make/file-disagrees` */
export function assertBundle(files: readonly MadeFile[], wanted: WantedBundle): void {
  throwIfAny(bundleProblems(files, wanted));
}
