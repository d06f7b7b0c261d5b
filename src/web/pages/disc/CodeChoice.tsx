import { useEffect, useState } from 'preact/hooks';
import type { Answer } from '../../engine/answer.ts';
import type { CodesView, CodeView } from '../../engine/codesView.ts';
import { shownNumber } from '../../parts/numbers.ts';
import { Problems } from '../../parts/Problems.tsx';
import { filesOf } from '../../project/project.ts';
import { useStore } from '../../project/store.ts';
import type { PageParts } from '../../shell/pageParts.ts';
import { words } from '../../words/en.ts';

/** Rest after the last change before codes are weighed again. [ms] */
const REST_MS = 500;

/** What the codes are worth for the need in the file; `null` while they are weighed. */
function useCodes(
  { project, background }: Pick<PageParts, 'project' | 'background'>,
  isWanted: boolean,
): Answer<CodesView> | null {
  const { fields } = useStore(project.state);
  const [answer, setAnswer] = useState<Answer<CodesView> | null>(null);
  // What a code is weighed by: the code itself does not count.
  const weighed = JSON.stringify([
    fields['need'],
    fields['head'],
    { ...(fields['disc'] as object), code: 0 },
  ]);
  useEffect(() => {
    if (!isWanted) return;
    const timer = setTimeout(async () => {
      const files = filesOf(project.state.get());
      const found = await background.run<Answer<CodesView>>((engine) => engine.codes(files), 'long');
      if (found) setAnswer(found);
    }, REST_MS);
    return () => clearTimeout(timer);
  }, [weighed, isWanted]);
  return answer;
}

/** Every code for this need, the best first, each with its reasons; one is chosen by its button. */
export function CodeChoice({ project, background }: Pick<PageParts, 'project' | 'background'>) {
  const { design } = useStore(project.state);
  const [isOpen, setOpen] = useState(false);
  const answer = useCodes({ project, background }, isOpen);
  const now = design?.instrument.disc.code;
  const { disc } = words;
  const use = (code: CodeView): void =>
    void project.setAll([
      { path: ['disc', 'code'], value: code.name },
      { path: ['disc', 'codeOptions'], value: optionsOf(code) },
    ]);
  return (
    <section class="panel codes">
      <h2>{disc.code}</h2>
      {now === undefined ? null : (
        <p>
          <strong>{disc.codeOf(words.fields.choice('disc.code', now))}.</strong> {disc.explains[now]}
        </p>
      )}
      <details onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>{disc.codesTitle}</summary>
        {isOpen && answer === null ? <p role="status">{disc.codesWeigh}</p> : null}
        {answer?.ok === false ? <Problems problems={answer.problems} isNote /> : null}
        <ol>
          {(answer?.ok ? answer.value.codes : []).map((code) => (
            <CodeEntry
              key={code.title}
              code={code}
              isUsed={isUsed(code, design?.instrument.disc)}
              onUse={() => use(code)}
            />
          ))}
        </ol>
        {answer?.ok ? <Roses roses={answer.value.roses} /> : null}
      </details>
    </section>
  );
}

function Roses({ roses }: Pick<CodesView, 'roses'>) {
  return (
    <>
      <h3>{words.disc.rosesTitle}</h3>
      <ul>
        {roses.map(({ sectors, advice }) => (
          <li key={sectors}>
            {sectors}: {advice}
          </li>
        ))}
      </ul>
    </>
  );
}

/** Options that are stated; none where the family chooses all. */
function optionsOf({ options }: CodeView) {
  const stated = Object.entries(options).filter(([, value]) => value !== undefined);
  return stated.length === 0 ? undefined : Object.fromEntries(stated);
}

function isUsed(
  { name, options }: CodeView,
  disc: { readonly code: string; readonly codeOptions: object } | undefined,
): boolean {
  const own = (disc?.codeOptions ?? {}) as Record<string, unknown>;
  return (
    name === disc?.code &&
    Object.entries(options).every(([option, value]) => (own[option] ?? value) === value)
  );
}

interface CodeEntryProps {
  readonly code: CodeView;
  readonly isUsed: boolean;
  onUse(): void;
}

function CodeEntry({ code, isUsed: used, onUse }: CodeEntryProps) {
  const { disc } = words;
  const { title, name, verdict, measures, reasons } = code;
  return (
    <li class="code" data-verdict={verdict}>
      <h3>
        {title} <span class="tag">{disc.verdicts[verdict]}</span>
      </h3>
      <p>{disc.explains[name]}</p>
      {measures ? (
        <p class="hint">
          {disc.measures(measures.tracks, measures.channels, shownNumber(measures.smallestMarkMm))}
        </p>
      ) : null}
      <ul>
        {reasons.map(({ isGood, text }) => (
          <li key={text} class={isGood ? 'good' : 'bad'}>
            <span aria-hidden="true">{isGood ? '+ ' : '− '}</span>
            {text}
          </li>
        ))}
      </ul>
      {used ? (
        <p class="hint">{disc.used}</p>
      ) : verdict === 'cannot' ? null : (
        <button type="button" onClick={onUse}>
          {disc.use(title)}
        </button>
      )}
    </li>
  );
}
