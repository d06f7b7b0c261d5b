import type { ComponentChildren } from 'preact';
import { words } from '../words/en.ts';
import { hrefOf, type PageName } from '../shell/route.ts';

interface VerdictProps {
  readonly says: 'yes' | 'no' | 'wait';
  readonly children: ComponentChildren;
  readonly next: PageName | null;
}

/** What the page has found, and the next step of the job. */
export function Verdict({ says, children, next }: VerdictProps) {
  return (
    <section class="verdict" data-says={says} aria-label={words.shell.verdict}>
      <div role="status">
        <p class="says">{children}</p>
      </div>
      {next === null ? null : (
        <a class="button" href={hrefOf(next)}>
          {words.shell.next(words.shell.pages[next])}
        </a>
      )}
    </section>
  );
}
