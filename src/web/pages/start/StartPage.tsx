import { useState } from 'preact/hooks';
import type { FirstAnswers } from '../../engine/firstAnswers.ts';
import type { FirstFile } from '../../engine/firstFile.ts';
import { shownDegrees, shownNumber } from '../../parts/numbers.ts';
import { useStore } from '../../project/store.ts';
import type { PageParts } from '../../shell/pageParts.ts';
import { hrefOf } from '../../shell/route.ts';
import { words } from '../../words/en.ts';
import { Examples } from './Examples.tsx';
import { StartForm } from './StartForm.tsx';
import './start.css';

const FIRST: Omit<FirstAnswers, 'name'> = {
  process: 'fdm',
  detector: 'photoresistor',
  sensors: 5,
  positions: 32,
  diameterMm: 90,
  boreDiameterMm: 5,
};

type Found = 'none' | 'looking' | 'cannot' | FirstFile;

/** From what someone has to a first file that works. */
export function StartPage({ project, engine, schema }: PageParts) {
  const text = words.start;
  const name = useStore(project.state, ({ design }) => design?.instrument.name ?? 'my vane');
  const [answers, setAnswers] = useState<FirstAnswers>({ ...FIRST, name });
  const [found, setFound] = useState<Found>('none');
  const make = async (): Promise<void> => {
    setFound('looking');
    const answer = await engine.firstFile(answers);
    if (!answer.ok || answer.value === null) return setFound('cannot');
    project.write(answer.value.text);
    setFound(answer.value);
  };
  const change = (part: Partial<FirstAnswers>): void => {
    setAnswers({ ...answers, ...part });
    setFound('none');
  };
  return (
    <>
      <p>{text.intro}</p>
      <div class="halves">
        <section class="panel fields">
          <h2>{text.have}</h2>
          <StartForm answers={answers} schema={schema} onChange={change} />
          <div>
            <button
              type="button"
              class="first"
              disabled={found === 'looking' || answers.name.trim() === ''}
              onClick={() => void make()}
            >
              {text.make}
            </button>
          </div>
          <p class="hint">{text.replaces}</p>
          <div role="status">
            {found === 'looking' ? <p>{text.making}</p> : null}
            {found === 'cannot' ? <p class="wrong">{text.cannot}</p> : null}
            {typeof found === 'object' ? <Ready file={found} answers={answers} /> : null}
          </div>
        </section>
        <Examples project={project} />
      </div>
    </>
  );
}

/** What the first file is, and where to go with it. */
function Ready({ file, answers }: { readonly file: FirstFile; readonly answers: FirstAnswers }) {
  const text = words.start;
  return (
    <section class="ready">
      <h2>{text.done}</h2>
      {file.positions < answers.positions ? <p>{text.fewer(file.positions)}</p> : null}
      {file.diameterMm > answers.diameterMm ? <p>{text.larger(shownNumber(file.diameterMm))}</p> : null}
      <p>
        {text.says(
          shownNumber(200 * file.goodShare, 0),
          shownDegrees(file.accuracyDeg),
          `${shownNumber(file.turnRateDegPerS)} °/s`,
        )}
      </p>
      <div class="buttons">
        <a class="button" href={hrefOf('disc')}>
          {text.look}
        </a>
        <a class="button" href={hrefOf('make')}>
          {text.files}
        </a>
      </div>
    </section>
  );
}
