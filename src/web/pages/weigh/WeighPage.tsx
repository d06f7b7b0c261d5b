import { useEffect, useState } from 'preact/hooks';
import type { WeighedNeed } from '../../../app/api.ts';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { FileField } from '../../parts/FileField.tsx';
import { shownNumber } from '../../parts/numbers.ts';
import { Problems } from '../../parts/Problems.tsx';
import { useWork } from '../../parts/useWork.ts';
import { Verdict } from '../../parts/Verdict.tsx';
import { filesOf } from '../../project/project.ts';
import { useStore } from '../../project/store.ts';
import type { PageParts } from '../../shell/pageParts.ts';
import { words } from '../../words/en.ts';
import { Ways } from './Ways.tsx';
import '../../dial/dial.css';
import './weigh.css';

const OWN = 'own';

/** How the verdict is marked; advice against a disc is no failure of the design. */
const SAYS = { 'build-a-disc': 'yes', 'do-not-build-a-disc': 'wait', 'nothing-serves': 'no' } as const;

interface PurposeProps extends Pick<PageParts, 'engine' | 'project'> {
  readonly purpose: string;
  readonly advice: WeighedNeed['purpose'];
  onChange(purpose: string): void;
}

/** What the readings are for, and the need that it proposes. */
function PurposePanel({ engine, project, purpose, advice, onChange }: PurposeProps) {
  const { weigh } = words;
  const [purposes, setPurposes] = useState<readonly { name: string; title: string }[]>([]);
  useEffect(() => void engine.purposes().then(setPurposes), [engine]);
  const take = async (): Promise<void> => {
    if (!advice) return;
    await project.set(['need', 'positions'], advice.need.positions);
    await project.set(['need', 'accuracyDeg'], advice.need.accuracyDeg);
  };
  return (
    <section class="panel fields">
      <ChoiceField
        name={weigh.purpose}
        hint={weigh.purposeHint}
        value={purpose}
        choices={[
          { value: OWN, text: weigh.ownNeed },
          ...purposes.map(({ name, title }) => ({ value: name, text: title })),
        ]}
        onChange={onChange}
      />
      {advice ? (
        <div role="status">
          {advice.says.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
          <button type="button" onClick={() => void take()}>
            {weigh.take}
          </button>
        </div>
      ) : null}
    </section>
  );
}

/** The numbers of a group of the file, each a field. */
function GroupOf({
  project,
  schema,
  group,
  title,
}: Pick<PageParts, 'project' | 'schema'> & { readonly group: string; readonly title: string }) {
  const parts = group.split('.');
  const fields =
    parts.reduce<typeof schema | undefined>((at, name) => at?.properties?.[name], schema)?.properties ?? {};
  const single = Object.entries(fields).filter(
    ([, field]) => !field.properties && !field.items && !field.oneOf,
  );
  return (
    <details class="panel">
      <summary>{title}</summary>
      <div class="fields coupon">
        {single.map(([name]) => (
          <FileField key={name} path={`${group}.${name}`} project={project} schema={schema} />
        ))}
      </div>
    </details>
  );
}

/** Is a coded disc the right sensor for your need at all? */
export function WeighPage({ engine, project, schema }: PageParts) {
  const { history } = useStore(project.state);
  const [purpose, setPurpose] = useState(OWN);
  const work = useWork<WeighedNeed>();
  const { weigh } = words;
  useEffect(() => {
    void work.start(() => engine.weigh(filesOf(project.state.get()), purpose === OWN ? null : purpose));
  }, [history.text, purpose]);
  const weighed = work.answer?.ok ? work.answer.value : null;
  const weighing = weighed?.weighing ?? null;
  const says = weighing === null ? 'wait' : SAYS[weighing.verdict.advice];
  return (
    <>
      <Problems problems={work.answer?.ok === false ? work.answer.problems : []} />
      <div class="halves">
        <div class="fields">
          <PurposePanel
            engine={engine}
            project={project}
            purpose={purpose}
            advice={weighed?.purpose ?? null}
            onChange={setPurpose}
          />
          <GroupOf project={project} schema={schema} group="need" title={weigh.needTitle} />
          <GroupOf project={project} schema={schema} group="site.wind" title={weigh.siteTitle} />
        </div>
        {weighing === null ? null : <Ways ways={weighing.principles} />}
      </div>
      {weighing === null || weighing.verdict.wouldChange.length === 0 ? null : (
        <section class="panel">
          <h2>{weigh.lastly}</h2>
          <ul>
            {weighing.verdict.wouldChange.map((change) => (
              <li key={change}>{change}</li>
            ))}
          </ul>
        </section>
      )}
      <Verdict says={says} next="disc">
        {weighing === null
          ? (work.fault ?? words.shell.reading)
          : `${weighing.verdict.headline} ${weighing.verdict.reasons.join(' ')}`}
      </Verdict>
      {weighing === null ? null : (
        <p class="hint">
          {weigh.rests(shownNumber(weighing.turnsPerYear, 0), weighing.windBasis === 'recorded')}
        </p>
      )}
    </>
  );
}
