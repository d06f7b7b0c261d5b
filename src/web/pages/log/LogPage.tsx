/** The page `log`. */
export function LogPage() {
  return null;
}
