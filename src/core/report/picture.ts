import { look } from './look.ts';
import { element, type Markup } from './markup.ts';

/** Size and words of a picture. */
export interface PictureFrame {
  readonly width: number;
  readonly height: number;
  /** Corner of the view box; [0, 0] unless the picture is drawn round its middle. */
  readonly origin?: readonly [number, number];
  /** What is seen, for those who do not see it. */
  readonly title: string;
}

/** A whole SVG picture on its own paper; its unit is one user unit, about a screen pixel. */
export function picture(
  { width, height, origin = [0, 0], title }: PictureFrame,
  ...parts: readonly Markup[]
): Markup {
  const [x, y] = origin;
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `${x} ${y} ${width} ${height}`,
      role: 'img',
      'font-family': look.font,
      'font-size': 12,
      fill: look.ink,
    },
    element('title', {}, title),
    element('rect', { x, y, width, height, fill: look.paper }),
    ...parts,
  );
}

/** Text at a place of the picture. [user units] */
export function label(
  text: string,
  at: { readonly x: number; readonly y: number },
  style: Readonly<Record<string, string | number>> = {},
): Markup {
  return element('text', { x: at.x, y: at.y, ...style }, text);
}

/** An open line through points of the picture. [user units] */
export function polyline(
  points: readonly (readonly [number, number])[],
  style: Readonly<Record<string, string | number>>,
): Markup {
  const text = points.map(([x, y]) => `${Number(x.toFixed(2))},${Number(y.toFixed(2))}`).join(' ');
  return element('polyline', { points: text, fill: 'none', ...style });
}
