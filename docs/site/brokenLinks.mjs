import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';

/** What a page asks for: links, pictures, styles and scripts, as written. */
function wanted(html) {
  return [...html.matchAll(/<(a|img|link|script|source|iframe)\b[^>]*?\s(?:href|src)="([^"]*)"/g)].map(
    ([, tag, address]) => ({ tag, address: address.replaceAll('&amp;', '&') }),
  );
}

/**
 * Links of the built pages that lead nowhere, and everything that a page would fetch from another host.
 *
 * A link that a reader follows to another host is allowed; a picture, style or script from there is not.
 */
export function brokenLinks(folder) {
  const pages = readdirSync(folder, { recursive: true }).filter((path) => path.endsWith('.html'));
  const text = new Map(pages.map((path) => [join(folder, path), readFileSync(join(folder, path), 'utf8')]));
  const names = new Map();
  const namesOf = (path) => {
    if (!names.has(path)) names.set(path, new Set([...text.get(path).matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id)));
    return names.get(path);
  };
  return [...text].flatMap(([path, html]) =>
    wanted(html).flatMap(({ tag, address }) => {
      const at = relative(folder, path);
      if (address.startsWith('data:')) return [];
      if (/^([a-z]+:)?\/\//.test(address)) return tag === 'a' ? [] : [`${at}: fetches ${address}`];
      const [file, anchor] = address.split('#');
      const goal = file === '' ? path : join(dirname(path), decodeURIComponent(file.split('?')[0]));
      if (!existsSync(goal)) return [`${at}: no page ${address}`];
      if (anchor && text.has(goal) && !namesOf(goal).has(decodeURIComponent(anchor)))
        return [`${at}: no heading ${address}`];
      return [];
    }),
  );
}
