import type { Problem } from '../../core/error/index.ts';
import { words } from '../words/en.ts';

/** Everything that stands in the way, each with its place and its cure. */
export function Problems({
  problems,
  isNote = false,
}: {
  readonly problems: readonly Problem[];
  readonly isNote?: boolean;
}) {
  if (problems.length === 0) return null;
  const { shell } = words;
  return (
    <section class={isNote ? 'problems notes' : 'problems'} role={isNote ? undefined : 'alert'}>
      <h2>{isNote ? shell.notesTitle : shell.wrongTitle(problems.length)}</h2>
      <ul>
        {problems.map(({ code, what, where, got, allowed, fix }) => (
          <li key={`${code}${where}`}>
            <strong>{what}</strong>
            <small>{where}</small>
            <small>
              {shell.got}: {got}. {shell.allowed}: {allowed}.
            </small>
            {shell.fix}: {fix}
          </li>
        ))}
      </ul>
    </section>
  );
}
