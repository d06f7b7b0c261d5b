import { Problems } from '../../parts/Problems.tsx';
import { saveFile } from '../../parts/saveFile.ts';
import { useAnswer } from '../../parts/useAnswer.ts';
import { Verdict } from '../../parts/Verdict.tsx';
import type { PageParts } from '../../shell/pageParts.ts';
import { words } from '../../words/en.ts';
import './explain.css';

/** Rest after the last change before the page is written again. [ms] */
const REST_MS = 150;

/** How it works, in words for everyone: the page that a maker publishes, shown as others will see it. */
export function ExplainPage({ engine, project }: PageParts) {
  const answer = useAnswer(project, (files) => engine.explain(files), REST_MS);
  const { explain } = words;
  const page = answer?.ok ? answer.value : null;
  return (
    <>
      <Problems problems={answer?.ok === false ? answer.problems : []} />
      {page === null ? (
        <p role="status">{answer === null ? explain.wait : explain.saysNo}</p>
      ) : (
        <>
          <p>{explain.about}</p>
          {/* The page is of the maker's own file, yet it may run nothing but its own script, on no data but its own. */}
          <iframe
            class="explained"
            title={explain.frame}
            sandbox="allow-scripts allow-modals"
            srcDoc={page}
          />
          <p>
            <button type="button" class="first" onClick={() => saveFile(explain.file, page)}>
              {explain.save}
            </button>
          </p>
          <p>{explain.print}</p>
          <section>
            <h2>{explain.kitTitle}</h2>
            <p>{explain.kit}</p>
            <p>
              <code>vanewright publish instrument.yaml --out kit</code>
            </p>
          </section>
        </>
      )}
      <Verdict says={answer === null ? 'wait' : page === null ? 'no' : 'yes'} next={null}>
        {answer === null ? explain.wait : page === null ? explain.saysNo : explain.says}
      </Verdict>
    </>
  );
}
