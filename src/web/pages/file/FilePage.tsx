import { useEffect, useRef, useState } from 'preact/hooks';
import type { Problem } from '../../../core/error/index.ts';
import { Verdict } from '../../parts/Verdict.tsx';
import { useStore } from '../../project/store.ts';
import type { PageParts } from '../../shell/pageParts.ts';
import { words } from '../../words/en.ts';
import { filePlace, lineSpan } from './filePlace.ts';
import './file.css';

/** The instrument file as text, with what is wrong in it at its lines. */
export function FilePage({ project }: PageParts) {
  const { history, answer, design, path } = useStore(project.state);
  const area = useRef<HTMLTextAreaElement>(null);
  const text = words.file;
  const problems = answer?.ok === false ? answer.problems : (design?.faults ?? []);
  const placed = problems.map((problem) => ({ problem, place: filePlace(problem.where, path) }));
  const lines = new Set(placed.flatMap(({ place }) => (place ? [place.line] : [])));
  const goTo = (line: number): void => {
    const { from, to } = lineSpan(history.text, line);
    area.current!.focus();
    area.current!.setSelectionRange(from, to);
    const height = area.current!.scrollHeight / history.text.split('\n').length;
    area.current!.scrollTop = Math.max(0, (line - 6) * height);
  };
  return (
    <>
      <p id="file-hint">{text.hint}</p>
      <div class="editor">
        <Gutter area={area} lines={history.text.split('\n').length} wrong={lines} />
        <textarea
          class="file"
          ref={area}
          aria-label={text.label}
          aria-describedby="file-hint"
          aria-invalid={problems.length > 0}
          spellcheck={false}
          autocapitalize="off"
          wrap="off"
          value={history.text}
          onInput={(event) => project.write(event.currentTarget.value, 'text')}
        />
      </div>
      <ul class="placed">
        {placed.map(({ problem, place }) => (
          <Placed
            key={problem.code + problem.where}
            problem={problem}
            line={place?.line ?? null}
            onGo={goTo}
          />
        ))}
      </ul>
      <Verdict says={answer === null ? 'wait' : problems.length === 0 ? 'yes' : 'no'} next="disc">
        {answer === null ? text.wait : problems.length === 0 ? text.good : text.bad(problems.length)}
      </Verdict>
    </>
  );
}

interface PlacedProps {
  readonly problem: Problem;
  readonly line: number | null;
  onGo(line: number): void;
}

function Placed({ problem: { what, where, got, allowed, fix }, line, onGo }: PlacedProps) {
  const { shell, file } = words;
  return (
    <li>
      <strong>{what}</strong> <small>{where}</small>
      <p>
        {shell.got}: {got}. {shell.allowed}: {allowed}. {shell.fix}: {fix}
      </p>
      {line === null ? null : (
        <button type="button" class="small" onClick={() => onGo(line)}>
          {file.line(line)}
        </button>
      )}
    </li>
  );
}

interface GutterProps {
  readonly area: { readonly current: HTMLTextAreaElement | null };
  readonly lines: number;
  readonly wrong: ReadonlySet<number>;
}

/** Numbers of the lines, those with something wrong marked; it scrolls with the text. */
function Gutter({ area, lines, wrong }: GutterProps) {
  const [top, setTop] = useState(0);
  useEffect(() => {
    const element = area.current!;
    const follow = (): void => setTop(element.scrollTop);
    element.addEventListener('scroll', follow, { passive: true });
    return () => element.removeEventListener('scroll', follow);
  }, []);
  return (
    <div class="gutter" aria-hidden="true">
      <div style={{ transform: `translateY(${-top}px)` }}>
        {Array.from({ length: lines }, (_, i) => (
          <div key={i} class={wrong.has(i + 1) ? 'wrong-line' : undefined}>
            {wrong.has(i + 1) ? '! ' : ''}
            {i + 1}
          </div>
        ))}
      </div>
    </div>
  );
}
