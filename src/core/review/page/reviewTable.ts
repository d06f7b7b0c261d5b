import type { DefinitionId } from './definitions.ts';

/** One table of a review: shown on the page and on paper, and written as CSV. */
export interface ReviewTable {
  /** Name of its CSV file, without the ending. */
  readonly name: string;
  readonly title: string;
  /** What explains its figures. */
  readonly defined: readonly DefinitionId[];
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Too long for the page: CSV only. */
  readonly isLong?: boolean;
}
