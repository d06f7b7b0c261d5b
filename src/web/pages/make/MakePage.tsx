import { useState } from 'preact/hooks';
import { paperNames, type PaperName } from '../../../core/make/index.ts';
import type { OutputFile } from '../../../ports/index.ts';
import type { MadeView } from '../../engine/makeView.ts';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { Problems } from '../../parts/Problems.tsx';
import { saveFile } from '../../parts/saveFile.ts';
import { useWork, type Work } from '../../parts/useWork.ts';
import { Verdict } from '../../parts/Verdict.tsx';
import { filesOf } from '../../project/project.ts';
import { useStore } from '../../project/store.ts';
import type { PageParts } from '../../shell/pageParts.ts';
import { words } from '../../words/en.ts';
import { Cautions } from './Cautions.tsx';
import { CouponFields } from './CouponFields.tsx';
import { MadeFiles } from './MadeFiles.tsx';
import { keptMade, keepMade } from './keptMade.ts';
import './make.css';

const BUNDLE = 'bundle.zip';
const COUPON = ['coupon'];

/** The same builds and seed as the command takes. */
const CHOICE = { builds: 1000, seed: 1 };

function says(made: MadeView | null): 'yes' | 'no' | 'wait' {
  return made === null ? 'wait' : made.verdict;
}

interface AllPanelProps {
  readonly work: Work<MadeView>;
  readonly canMake: boolean;
  readonly paper: PaperName;
  readonly bundle: OutputFile | null;
  onPaper(paper: PaperName): void;
  onMake(): void;
}

/** Makes everything, and gives it as one file. */
function AllPanel({ work, canMake, paper, bundle, onPaper, onMake }: AllPanelProps) {
  const { make } = words;
  return (
    <section class="panel fields">
      <h2>{make.allTitle}</h2>
      <ChoiceField
        name={make.paper}
        hint={make.paperHint}
        value={paper}
        choices={paperNames.map((name) => ({ value: name, text: make.papers[name] ?? name }))}
        onChange={(value) => onPaper(value as PaperName)}
      />
      <div class="row">
        <button type="button" class="first" disabled={work.isRunning || !canMake} onClick={onMake}>
          {work.isRunning ? make.making : make.makeAll}
        </button>
        {bundle === null ? null : (
          <button type="button" onClick={() => saveFile(BUNDLE, bundle.content)}>
            {make.saveAll}
          </button>
        )}
      </div>
      <p role="status">{work.isRunning ? make.takes : (work.fault ?? '')}</p>
    </section>
  );
}

/** What do you cut, print, solder and load? */
export function MakePage({ engine, project, schema }: PageParts) {
  const { design, answer, history } = useStore(project.state);
  const work = useWork<MadeView>();
  const [paper, setPaper] = useState<PaperName>('a4');
  const { make } = words;
  const fresh = work.answer?.ok ? work.answer.value : null;
  const made = fresh ?? keptMade(history.text);
  const problems =
    work.answer?.ok === false ? work.answer.problems : answer?.ok === false ? answer.problems : [];
  const start = (only: readonly string[] | null): void => {
    const text = history.text;
    void work.start(async () => {
      const given = await engine.make(filesOf(project.state.get()), { ...CHOICE, paper, only });
      if (given.ok) keepMade(text, given.value);
      return given;
    });
  };
  return (
    <>
      <Problems problems={problems} />
      {design === null ? null : <Cautions instrument={design.instrument} />}
      <section class="panel fields">
        <h2>{make.couponTitle}</h2>
        <p>{make.couponWhy}</p>
        <div class="row">
          <button type="button" disabled={work.isRunning} onClick={() => start(COUPON)}>
            {make.couponMake}
          </button>
        </div>
        <CouponFields project={project} schema={schema} />
      </section>
      <AllPanel
        work={work}
        canMake={answer?.ok === true}
        paper={paper}
        bundle={made?.files.find(({ path }) => path === BUNDLE) ?? null}
        onPaper={setPaper}
        onMake={() => start(null)}
      />
      {made === null ? null : (
        <>
          <MadeFiles files={made.files} />
          <Problems problems={made.leftOut} isNote />
        </>
      )}
      <Verdict says={says(made)} next="fit">
        {made === null
          ? make.saysWait
          : made.verdict === 'yes'
            ? make.saysYes(made.files.length)
            : make.saysNo(made.reasons.join(' '))}
      </Verdict>
    </>
  );
}
