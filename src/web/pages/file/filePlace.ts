/** Line and column that a problem names; `null` where it names none of this file. From 1. */
export function filePlace(
  where: string,
  path: string,
): { readonly line: number; readonly column: number } | null {
  const name = path.split('/').at(-1)!;
  const found = /^(.*?):(\d+):(\d+)/.exec(where);
  if (!found || !found[1]!.endsWith(name)) return null;
  return { line: Number(found[2]), column: Number(found[3]) };
}

/** Where a line begins in a text, and where it ends. [characters] */
export function lineSpan(text: string, line: number): { readonly from: number; readonly to: number } {
  let from = 0;
  for (let i = 1; i < line; i++) {
    const next = text.indexOf('\n', from);
    if (next < 0) break;
    from = next + 1;
  }
  const end = text.indexOf('\n', from);
  return { from, to: end < 0 ? text.length : end };
}
