/** Lines told one by one; all of them are in `--json`. */
const TOLD = 5;

/** Which lines of which file are no rows of numbers. */
export function leftOutLines(
  leftOut: readonly { readonly file: string; readonly lines: readonly number[] }[],
): string[] {
  return leftOut.map(({ file, lines }) => {
    const more = lines.length > TOLD ? ` and ${lines.length - TOLD} more` : '';
    return `- ${file}: ${lines.slice(0, TOLD).join(', ')}${more}`;
  });
}
