/** The page `head`. */
export function HeadPage() {
  return null;
}
