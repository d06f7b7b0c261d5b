import { chapters } from './chapters.mjs';

const escaped = (text) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');

const inOrder = chapters.flatMap(({ pages }) => pages);

/** The way from the folder of a page to the root. */
const upFrom = (path) => '../'.repeat(path.split('/').length - 1) || './';

function link({ path, title }, up, here) {
  const current = path === here ? ' aria-current="page"' : '';
  return `<li><a href="${up}${path}.html"${current}>${escaped(title)}</a></li>`;
}

function navigation(here, up) {
  return chapters
    .map(({ title, pages }) => {
      const open = pages.some(({ path }) => path === here) ? ' open' : '';
      return `<details${open}><summary>${title}</summary><ul>${pages.map((page) => link(page, up, here)).join('')}</ul></details>`;
    })
    .join('\n');
}

function neighbours(at, up) {
  const [before, after] = [inOrder[at - 1], inOrder[at + 1]];
  const to = (page, word) => (page ? `<a href="${up}${page.path}.html">${word}: ${escaped(page.title)}</a>` : '');
  return `<nav class="neighbours" aria-label="Before and after">${to(before, 'Before')}${to(after, 'Next')}</nav>`;
}

/** A page of the docs round its text. Throws for a page that no chapter names. */
export function pageFrame({ filePathStem }, content) {
  const here = filePathStem.slice(1);
  const at = inOrder.findIndex(({ path }) => path === here);
  if (at < 0) throw new Error(`docs/${here}.md is in no chapter of docs/site/chapters.mjs`);
  const up = upFrom(here);
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(inOrder[at].title)} · vanewright</title>
<link rel="stylesheet" href="${up}docs.css">
<link rel="icon" href="data:,">
</head>
<body>
<a class="skip" href="#text">To the text</a>
<header><a href="${up}index.html">vanewright</a> <span>docs</span></header>
<div class="page">
<nav class="chapters" aria-label="Chapters">
${navigation(here, up)}
<p><a href="${up}api/index.html">Library, every name</a></p>
</nav>
<main id="text" tabindex="-1">
${content}
${neighbours(at, up)}
</main>
</div>
</body>
</html>
`;
}
