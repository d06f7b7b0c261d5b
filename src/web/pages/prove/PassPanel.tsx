import type { Proof } from '../../../core/proof/index.ts';
import { shownDegrees } from '../../parts/numbers.ts';
import type { PageParts } from '../../shell/pageParts.ts';
import { words } from '../../words/en.ts';
import { percent, rate } from './shares.ts';

/** Changes that help most, each with what it does on the same builds; one is written into the file by its button. */
export function PassPanel({ project, proof }: Pick<PageParts, 'project'> & { readonly proof: Proof | null }) {
  const text = words.prove;
  return (
    <section class="panel pass">
      <h2>{proof?.verdict === 'yes' ? text.passTitleGood : text.passTitle}</h2>
      {proof === null ? <p role="status">{text.passWait}</p> : null}
      {proof?.changes.length === 0 ? <p>{text.passNone}</p> : null}
      <ol>
        {(proof?.changes ?? []).map(({ title, how, edits, verdict, yield: good, p95Deg, limitDegPerS }) => (
          <li key={title}>
            <h3>{title}</h3>
            <p>{how}</p>
            <p>
              {text.passThen(percent(good.value), shownDegrees(p95Deg), rate(limitDegPerS))}{' '}
              <strong>{verdict === 'yes' ? text.passEnough : text.passNotEnough}</strong>
            </p>
            <button type="button" onClick={() => void project.setAll(edits)}>
              {text.apply(title)}
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}
