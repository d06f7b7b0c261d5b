/** The page `prove`. */
export function ProvePage() {
  return null;
}
