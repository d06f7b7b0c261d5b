/** A heading with its lines below it, indented; nothing where there are no lines. */
export function part(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  ${line}`)];
}
