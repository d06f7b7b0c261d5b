/**
 * Rows of a CSV file, quotes taken away.
 *
 * @returns Each row's cells; n ≥ 0.
 * @source RFC 4180, section 2.
 * @check src/core/make/readBack/readBundle.test.ts
 */
export function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  for (const [, quoted, plain, end] of text.matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r?\n|$)/g)) {
    if (end === '' && row.length === 0 && !quoted && !plain) break;
    row.push(quoted === undefined ? plain! : quoted.replaceAll('""', '"'));
    if (end === ',') continue;
    rows.push(row);
    row = [];
  }
  return rows;
}
