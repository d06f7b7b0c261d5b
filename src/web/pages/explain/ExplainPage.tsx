/** The page `explain`. */
export function ExplainPage() {
  return null;
}
