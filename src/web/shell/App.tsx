import { useEffect, useRef } from 'preact/hooks';
import { words } from '../words/en.ts';
import { Bar } from './Bar.tsx';
import { Connection } from './Connection.tsx';
import { Page } from './Page.tsx';
import type { PageParts } from './pageParts.ts';
import { hrefOf, pageNames, usePage } from './route.ts';

/** The whole workbench. */
export function App(parts: PageParts) {
  const page = usePage();
  const { shell } = words;
  const main = useRef<HTMLElement>(null);
  const isFirst = useRef(true);
  useEffect(() => {
    document.title = `${shell.pages[page]} · vanewright`;
    // A new page is read from its top, by those who hear it too.
    if (!isFirst.current) main.current?.focus();
    isFirst.current = false;
    scrollTo(0, 0);
  }, [page]);
  useEffect(() => keysOf(parts), [parts.project]);
  return (
    <div class="frame">
      <a
        class="skip button"
        href="#page"
        onClick={(event) => (event.preventDefault(), main.current?.focus())}
      >
        {shell.skip}
      </a>
      <div class="top">
        <Bar project={parts.project} />
        <Connection project={parts.project} />
      </div>
      <nav class="steps" aria-label={shell.steps}>
        <ol>
          {pageNames.map((name, index) => (
            <li key={name}>
              <a href={hrefOf(name)} aria-current={name === page ? 'page' : undefined}>
                <span>{index + 1}</span>
                {shell.pages[name]}
              </a>
            </li>
          ))}
        </ol>
      </nav>
      <main class="page" id="page" ref={main} tabIndex={-1}>
        <header>
          <h1>{shell.questions[page]}</h1>
        </header>
        <Page key={page} page={page} parts={parts} />
      </main>
    </div>
  );
}

/** Undo and redo by the keys that everyone knows; text fields keep their own. */
function keysOf({ project }: PageParts): () => void {
  const press = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    if (event.target instanceof HTMLElement && event.target.matches('input[type=text], textarea')) return;
    const key = event.key.toLowerCase();
    if (key === 'z' && !event.shiftKey) project.undo();
    else if (key === 'y' || (key === 'z' && event.shiftKey)) project.redo();
    else return;
    event.preventDefault();
  };
  addEventListener('keydown', press);
  return () => removeEventListener('keydown', press);
}
