/** The page `make`. */
export function MakePage() {
  return null;
}
