import type { ComponentChildren, RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { words } from '../words/en.ts';
import { Bar } from './Bar.tsx';
import { Connection } from './Connection.tsx';
import { Page } from './Page.tsx';
import type { PageParts } from './pageParts.ts';
import { hrefOf, pageNames, usePage, type PageName } from './route.ts';

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
    <Frame
      page={page}
      main={main}
      title={shell.questions[page]}
      top={
        <>
          <Bar project={parts.project} />
          <Connection project={parts.project} />
        </>
      }
    >
      <Page key={page} page={page} parts={parts} />
    </Frame>
  );
}

/** The frame of every page, as far as it can be drawn before the file has been read. */
export function Opening() {
  const page = usePage();
  const main = useRef<HTMLElement>(null);
  // Without an address it is not known yet whether there is a project to show.
  const title = location.hash === '' ? words.shell.opening : words.shell.questions[page];
  return (
    <Frame page={page} main={main} title={title} top={<Waiting />}>
      <p role="status">{words.shell.reading}</p>
    </Frame>
  );
}

function Waiting() {
  return (
    <header class="bar">
      <div class="name">
        vanewright <small>{words.shell.opening}</small>
      </div>
    </header>
  );
}

interface FrameProps {
  readonly page: PageName;
  readonly main: RefObject<HTMLElement | null>;
  readonly title: string;
  readonly top: ComponentChildren;
  readonly children: ComponentChildren;
}

function Frame({ page, main, title, top, children }: FrameProps) {
  const { shell } = words;
  return (
    <div class="frame">
      <a
        class="skip button"
        href="#page"
        onClick={(event) => (event.preventDefault(), main.current?.focus())}
      >
        {shell.skip}
      </a>
      <div class="top">{top}</div>
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
          <h1>{title}</h1>
        </header>
        {children}
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
