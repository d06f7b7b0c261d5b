import { useMemo } from 'preact/hooks';
import { headOf } from '../../dial/liveModel.ts';
import { Figure } from '../../parts/Figure.tsx';
import { shownNumber } from '../../parts/numbers.ts';
import { Problems } from '../../parts/Problems.tsx';
import { useAnswer } from '../../parts/useAnswer.ts';
import { Verdict } from '../../parts/Verdict.tsx';
import { useStore } from '../../project/store.ts';
import type { PageParts } from '../../shell/pageParts.ts';
import { words } from '../../words/en.ts';
import { HeadFields } from './HeadFields.tsx';
import { LevelsPanel, ResistorPanel, SpeedPanel } from './LevelsPanel.tsx';
import { PlacesTable } from './PlacesTable.tsx';

/** Rest after the last change before pictures are drawn again. [ms] */
const REST_MS = 150;

/** Where lights and sensors go, and what the converter will see. */
export function HeadPage(parts: PageParts) {
  const { project, engine } = parts;
  const { design, answer } = useStore(project.state);
  const head = useMemo(() => (design ? headOf(design) : null), [design]);
  const places = useAnswer(project, (files) => engine.picture(files, 'disc'), REST_MS);
  const signals = useAnswer(project, (files) => engine.picture(files, 'signals'), REST_MS);
  const problems = answer?.ok === false ? answer.problems : (design?.faults ?? []);
  const text = words.head;
  const asked = design?.instrument.need.turnRateDegPerS ?? 0;
  const limit = head?.speed.limitDegPerS ?? 0;
  const rate = (value: number): string => `${shownNumber(value, value < 10 ? 2 : 0)} °/s`;
  const isFast = limit >= asked;
  return (
    <>
      <Problems problems={problems} />
      <div class="halves">
        <div>
          <section>
            <h2>{text.placesTitle}</h2>
            {places?.ok ? (
              <Figure svg={places.value} caption={text.placesCaption} name="head-places" />
            ) : (
              <p role="status">{text.wait}</p>
            )}
            {head ? <PlacesTable head={head} /> : null}
          </section>
          {head ? (
            <>
              <LevelsPanel head={head} />
              <ResistorPanel head={head} project={project} />
              <SpeedPanel head={head} says={text.speedSays(rate(limit), rate(asked))} />
            </>
          ) : null}
        </div>
        <HeadFields {...parts} />
      </div>
      <section>
        <h2>{text.signalsTitle}</h2>
        {signals?.ok ? (
          <Figure svg={signals.value} caption={text.signalsCaption} name="signals" />
        ) : (
          <p role="status">{text.wait}</p>
        )}
      </section>
      <Problems problems={design?.warnings ?? []} isNote />
      <Verdict says={answer === null ? 'wait' : problems.length === 0 && isFast ? 'yes' : 'no'} next="prove">
        {answer === null ? text.saysWait : null}
        {answer !== null && problems.length > 0 ? text.saysNo : null}
        {answer !== null && problems.length === 0
          ? isFast
            ? text.says(rate(limit))
            : text.saysSlow(rate(limit), rate(asked))
          : null}
      </Verdict>
    </>
  );
}
