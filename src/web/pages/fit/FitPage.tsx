/** The page `fit`. */
export function FitPage() {
  return null;
}
