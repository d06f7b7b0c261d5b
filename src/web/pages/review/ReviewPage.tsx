/** The page `review`. */
export function ReviewPage() {
  return null;
}
