/** What stands in a cell: nothing where nothing is known. */
export type DataValue = string | number | null;

/** One column of a table for other programs. */
export interface DataColumn<Row> {
  /** With its unit in square brackets, [-] for a share or a count; without one for words. */
  readonly heading: string;
  readonly meaning: string;
  readonly of: (row: Row) => DataValue;
}

/** A table of plain numbers and words. */
export interface DataTable {
  /** Name of its file, without the ending. */
  readonly name: string;
  readonly headings: readonly string[];
  /** What each column holds. */
  readonly meanings: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Digits that reach a file: far finer than any figure is known. [-] */
const DIGITS = 9;

/** A number as any program reads it, never with a unit or a sign for nothing. */
function cellOf(value: DataValue): string {
  if (value === null) return '';
  return typeof value === 'string' ? value : String(Number(value.toPrecision(DIGITS)));
}

/** A table of one row for each thing. */
export function dataTable<Row>(
  name: string,
  things: readonly Row[],
  columns: readonly DataColumn<Row>[],
): DataTable {
  return {
    name,
    headings: columns.map(({ heading }) => heading),
    meanings: columns.map(({ meaning }) => meaning),
    rows: things.map((thing) => columns.map(({ of }) => cellOf(of(thing)))),
  };
}

/** A column. */
export function column<Row>(heading: string, meaning: string, of: DataColumn<Row>['of']): DataColumn<Row> {
  return { heading, meaning, of };
}

type Bounds = { readonly low: number; readonly high: number } | null | undefined;

/** Two columns for the ends of an interval. */
export function ends<Row>(
  what: string,
  unit: string,
  meaning: string,
  of: (row: Row) => Bounds,
): DataColumn<Row>[] {
  return [
    column(`${what}, low [${unit}]`, `Lower end of ${meaning}.`, (row) => of(row)?.low ?? null),
    column(`${what}, high [${unit}]`, `Upper end of ${meaning}.`, (row) => of(row)?.high ?? null),
  ];
}

/** An instant as ISO 8601 has it, UTC. [ms UTC] */
export const isoTime = (atMs: number): string => new Date(atMs).toISOString();
