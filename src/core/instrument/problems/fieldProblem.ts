import type { Problem } from '../../error/index.ts';
import type { Path } from '../yaml/places.ts';

/** What is wrong with one field, before its place in the file is known. */
export interface FieldProblem extends Omit<Problem, 'where'> {
  readonly path: Path;
  /** Whether the name or the value is to blame. */
  readonly part: 'key' | 'value';
  /** A field the maker may have meant: nothing is said about it by rules, since its value is not known. */
  readonly meant?: Path;
}

/** The problem as a maker reads it. */
export function problemAt(where: string, { code, what, got, allowed, fix }: FieldProblem): Problem {
  return { code, what, where, got, allowed, fix };
}
