import type { Instrument } from '../../../core/instrument/index.ts';
import { CAUTIONS_DEFER, cautionsFor } from '../../../core/make/index.ts';
import { words } from '../../words/en.ts';

/** What can hurt while this very design is made and put up. */
export function Cautions({ instrument }: { readonly instrument: Instrument }) {
  return (
    <details class="panel cautions" open>
      <summary>
        <h2>{words.make.cautions}</h2>
      </summary>
      {cautionsFor(instrument).map(({ title, sentences, source }) => (
        <section key={title}>
          <h3>{title}</h3>
          <p>{sentences.join(' ')}</p>
          <p class="hint">{words.make.source(source)}</p>
        </section>
      ))}
      <p>{CAUTIONS_DEFER}</p>
    </details>
  );
}
