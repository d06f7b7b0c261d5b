// The docs as a folder of static pages: `npm run docs`. The Markdown is the same that one reads in the repository.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { pageFrame } from './pageFrame.mjs';
import { headingName } from './headings.mjs';

const look = (name) => readFileSync(fileURLToPath(new URL(name, import.meta.url)), 'utf8');

/** The look of the workbench, its dark half for who prefers dark, and what only the docs need. */
function styles() {
  const base = look('../../src/web/look/base.css');
  const dark = /:root\[data-theme='dark'\] \{([^}]*)\}/.exec(base)[1];
  return `${base}\n@media (prefers-color-scheme: dark) {\n  :root {${dark}}\n}\n${look('docs.css')}`;
}

/** Headings get the names that links in Markdown use, and links lead to pages instead of files. */
function asPages(markdown) {
  markdown.core.ruler.push('heading-names', ({ tokens }) => {
    const used = new Map();
    tokens.forEach((token, i) => {
      if (token.type !== 'heading_open') return;
      token.attrSet('id', headingName(tokens[i + 1].content, used));
    });
  });
  markdown.core.ruler.push('page-links', ({ tokens }) => {
    for (const { children } of tokens)
      for (const token of children ?? []) {
        const href = token.type === 'link_open' ? token.attrGet('href') : null;
        if (href && !/^[a-z]+:/.test(href)) token.attrSet('href', href.replace(/[.]md(?=$|#)/, '.html'));
      }
  });
  const { fence } = markdown.renderer.rules;
  // What scrolls must be reached by keyboard.
  markdown.renderer.rules.fence = (...words) => fence(...words).replace('<pre>', '<pre tabindex="0">');
  markdown.renderer.rules.table_open = () => '<div class="wide" tabindex="0" role="group" aria-label="Table"><table>';
  markdown.renderer.rules.table_close = () => '</table></div>';
}

export default function site(eleventy) {
  eleventy.setQuietMode(true);
  eleventy.amendLibrary('md', asPages);
  eleventy.addGlobalData('permalink', () => ({ page }) => `${page.filePathStem}.html`);
  eleventy.addPassthroughCopy({ 'docs/pictures': 'pictures', 'docs/how-to/files': 'how-to/files' });
  eleventy.addTransform('frame', function frame(content) {
    return this.page.inputPath.endsWith('.md') ? pageFrame(this.page, content) : content;
  });
  eleventy.addTemplate('docs.11ty.js', { data: () => ({ permalink: 'docs.css' }), render: styles });
  return {
    dir: { input: 'docs' },
    markdownTemplateEngine: false,
    templateFormats: ['md', '11ty.js'],
  };
}
