/**
 * Shades of the speed classes, light to dark: told apart by lightness alone, so that they serve every eye and a grey
 * print. Own choice.
 */
const SHADES = ['#dbe5df', '#b5cdc7', '#8ab1ae', '#5f9296', '#3f717c', '#28505f', '#142f3d'] as const;

/** Shade of a class of so many, light to dark. [-] */
export function shadeOf(speedClass: number, classes: number): string {
  const last = SHADES.length - 1;
  const place = classes <= 1 ? 4 : Math.round((speedClass * last) / (classes - 1));
  return SHADES[Math.min(last, place)]!;
}
