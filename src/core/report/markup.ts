/** Text made safe for HTML and SVG, between tags and inside quoted attributes alike. */
export function escapeText(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`).replace(UNPRINTABLE, '\uFFFD');
}

// Characters that XML 1.0 forbids, so that a hostile name cannot break a picture. @source W3C XML 1.0, section 2.2

const UNPRINTABLE =
  /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;

/** Markup that is safe already: made by `element` or `markup`, never from a maker's text directly. */
export interface Markup {
  readonly html: string;
}

/** Value of an attribute; numbers keep at most four decimals, `null` leaves the attribute out. */
export type Attribute = string | number | null;

function attributeText([name, value]: [string, Attribute]): string {
  if (value === null) return '';
  return ` ${name}="${typeof value === 'number' ? Number(value.toFixed(4)) : escapeText(value)}"`;
}

/**
 * One element of HTML or SVG.
 *
 * @param children - Text, which is made safe, or markup, which is safe already.
 */
export function element(
  name: string,
  attributes: Readonly<Record<string, Attribute>> = {},
  ...children: readonly (Markup | string)[]
): Markup {
  const open = `${name}${Object.entries(attributes).map(attributeText).join('')}`;
  if (children.length === 0 && !NEEDS_END.has(name)) return { html: `<${open}/>` };
  return { html: `<${open}>${joined(children).html}</${name}>` };
}

/** HTML elements that must have an end tag even when empty. */
const NEEDS_END = new Set(['td', 'th', 'div', 'span', 'p', 'script', 'style', 'section', 'figure', 'text']);

/** Several pieces one after another. */
export function joined(children: readonly (Markup | string)[]): Markup {
  return {
    html: children.map((child) => (typeof child === 'string' ? escapeText(child) : child.html)).join(''),
  };
}
