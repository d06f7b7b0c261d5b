import { useState } from 'preact/hooks';
import type { BuildStatistics } from '../../../core/proof/index.ts';
import type { Answer } from '../../engine/answer.ts';
import type { CompareView } from '../../engine/compareView.ts';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { shownDegrees, shownNumber } from '../../parts/numbers.ts';
import { Problems } from '../../parts/Problems.tsx';
import { useAnswer } from '../../parts/useAnswer.ts';
import type { PageParts } from '../../shell/pageParts.ts';
import { words } from '../../words/en.ts';
import { percent } from './shares.ts';

/** Where the second file lies among the first one's. */
const SECOND = 'second file.yaml';
const BUILDS = { builds: 500, seed: 1 };

/** A second file beside the open one, in the same virtual builds. */
export function ComparePanel(parts: Pick<PageParts, 'project' | 'engine'>) {
  const text = words.prove;
  const [second, setSecond] = useState<string | null>(null);
  const open = async (file: File | undefined): Promise<void> => {
    if (file) setSecond(await file.text());
  };
  const takeExample = async (name: string): Promise<void> => {
    if (name === '') return setSecond(null);
    const { examples } = await import('../../project/examples.ts');
    setSecond(examples[name as keyof typeof examples]);
  };
  const names = ['jetty', 'dome', 'sluice', 'tricolour'];
  return (
    <section class="panel compare">
      <h2>{text.compareTitle}</h2>
      <p>{text.compareHint}</p>
      <div class="buttons">
        <label class="button">
          {text.compareOpen}
          <input
            class="visually-hidden"
            type="file"
            accept=".yaml,.yml,.json"
            onChange={(event) => void open(event.currentTarget.files?.[0])}
          />
        </label>
        {second === null ? null : (
          <button type="button" onClick={() => setSecond(null)}>
            {text.compareEnd}
          </button>
        )}
      </div>
      <ChoiceField
        name={text.compareExample}
        hint=""
        value=""
        choices={[{ value: '', text: text.compareNone }, ...names.map((value) => ({ value, text: value }))]}
        onChange={(name) => void takeExample(name)}
      />
      {second === null ? null : <Compared key={second} {...parts} second={second} />}
    </section>
  );
}

function Compared({
  project,
  engine,
  second,
}: Pick<PageParts, 'project' | 'engine'> & { readonly second: string }) {
  const answer: Answer<CompareView> | null = useAnswer(
    project,
    ({ files, path }) => engine.compare({ path, files: { ...files, [SECOND]: second } }, SECOND, BUILDS),
    600,
  );
  if (answer === null) return <p role="status">{words.prove.wait}</p>;
  if (!answer.ok) return <Problems problems={answer.problems} />;
  return <CompareTable view={answer.value} />;
}

const rows: readonly (readonly [string, (builds: BuildStatistics) => string])[] = [
  [words.prove.goodBuilds, (builds) => percent(builds.yield.value)],
  [words.prove.median, (builds) => shownDegrees(builds.maxErrorDeg.p50)],
  [words.prove.p95Short, (builds) => shownDegrees(builds.maxErrorDeg.p95)],
  [words.prove.worst, (builds) => shownDegrees(builds.maxErrorDeg.worst)],
  [words.prove.illegal, (builds) => percent(builds.illegalShare)],
];

function CompareTable({ view: { comparison, names, accuraciesDeg } }: { readonly view: CompareView }) {
  const text = words.prove;
  const { first, second, yieldDifference, onlyFirstGood, onlySecondGood } = comparison;
  const points = (share: number): string => `${shownNumber(100 * share, 1)} %`;
  return (
    <>
      <div class="scroll-x" tabIndex={0} role="region" aria-label={text.compareTitle}>
        <table>
          <thead>
            <tr>
              <th scope="col">{text.figure}</th>
              <th scope="col">{names[0]}</th>
              <th scope="col">{names[1]}</th>
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">{text.accuracy}</th>
              {accuraciesDeg.map((deg, i) => (
                <td key={i}>{shownDegrees(deg)}</td>
              ))}
            </tr>
            {rows.map(([name, say]) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>{say(first)}</td>
                <td>{say(second)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p>
        {text.difference(
          points(yieldDifference.value),
          points(yieldDifference.low),
          points(yieldDifference.high),
        )}{' '}
        {text.onlyOne(onlyFirstGood, onlySecondGood)}
      </p>
    </>
  );
}
