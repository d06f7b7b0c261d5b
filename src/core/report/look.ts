/**
 * The one palette of every picture and page: ink on drawing paper and one accent.
 *
 * Contrast on paper by WCAG 2.2: ink 13.9, faint ink 5.4, accent 5.0; the pair accent and ink differs in lightness, so that
 * it is told apart without colour.
 */
export const look = {
  paper: '#f6f3ea',
  ink: '#1f2d36',
  faintInk: '#5b6a73',
  line: '#c9c5b8',
  accent: '#a8481f',
  accentTint: '#ecd9cc',
  material: '#3b4b55',
  light: '#fffdf6',
  font: "ui-sans-serif, system-ui, 'DejaVu Sans', sans-serif",
} as const;
