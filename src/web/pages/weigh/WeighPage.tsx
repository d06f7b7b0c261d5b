/** The page `weigh`. */
export function WeighPage() {
  return null;
}
