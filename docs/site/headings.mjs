/** The name that a link uses for a heading: lower case, words joined by hyphens; the second of a name gets -1. */
export function headingName(text, used) {
  const plain = text
    .replace(/[`*_]/g, '')
    .replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')
    .toLowerCase()
    .replace(/[^\p{L}\p{N} -]/gu, '')
    .trim()
    .replaceAll(' ', '-');
  const seen = used.get(plain) ?? 0;
  used.set(plain, seen + 1);
  return seen === 0 ? plain : `${plain}-${seen}`;
}
