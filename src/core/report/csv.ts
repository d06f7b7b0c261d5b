/**
 * One cell of a CSV file: quoted where needed, and never read as a formula by a spreadsheet.
 *
 * @source RFC 4180, section 2; a leading = + - @ is kept from acting as a formula by a quote mark: common practice, no source.
 */
function cell(text: string): string {
  const inert = /^[=+\-@\t\r]/.test(text) && !/^[+-]?\d+([.]\d+)?$/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(inert) ? `"${inert.replaceAll('"', '""')}"` : inert;
}

/** Lines of a CSV file, CRLF ended. @source RFC 4180, section 2 */
export function csvText(headings: readonly string[], rows: readonly (readonly string[])[]): string {
  return [headings, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}
