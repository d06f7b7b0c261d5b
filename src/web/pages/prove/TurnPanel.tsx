import type { QuickProof } from '../../engine/quickProof.ts';
import { Figure } from '../../parts/Figure.tsx';
import { useAnswer } from '../../parts/useAnswer.ts';
import type { PageParts } from '../../shell/pageParts.ts';
import { words } from '../../words/en.ts';

/** Error over one turn, and the map of words. */
export function TurnPanel({
  project,
  engine,
  quick,
}: Pick<PageParts, 'project' | 'engine'> & { readonly quick: QuickProof }) {
  const text = words.prove;
  const map = useAnswer(project, (files) => engine.picture(files, 'words'), 300);
  return (
    <section>
      <h2>{text.turnTitle}</h2>
      <Figure svg={quick.pictures.turn} caption={text.turnCaption} name="turn" />
      {map?.ok ? (
        <>
          <h2>{text.wordsTitle}</h2>
          <Figure svg={map.value} caption={text.wordsCaption} name="words" />
        </>
      ) : null}
    </section>
  );
}
