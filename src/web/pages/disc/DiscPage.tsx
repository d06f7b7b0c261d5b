import { TurningDisc } from '../../dial/TurningDisc.tsx';
import { FileField } from '../../parts/FileField.tsx';
import { GroupField } from '../../parts/GroupField.tsx';
import { shownDegrees } from '../../parts/numbers.ts';
import { Problems } from '../../parts/Problems.tsx';
import { SavePicture } from '../../parts/SavePicture.tsx';
import { Verdict } from '../../parts/Verdict.tsx';
import { useStore } from '../../project/store.ts';
import type { PageParts } from '../../shell/pageParts.ts';
import { words } from '../../words/en.ts';
import { CodeChoice } from './CodeChoice.tsx';
import { MakingFields, OwnWords, StripFields } from './MakingFields.tsx';
import { SolidsPanel } from './SolidsPanel.tsx';
import './disc.css';

const need = ['need.positions', 'need.accuracyDeg', 'need.turnRateDegPerS', 'need.mustSurvivePowerLoss'];
const size = ['disc.diameterMm', 'disc.hubDiameterMm', 'disc.webMm', 'disc.rimMm', 'disc.finest'];
const notch = ['disc.notch.widthMm', 'disc.notch.depthMm'];

/** Which code, on what disc. */
export function DiscPage(parts: PageParts) {
  const { project, schema } = parts;
  const { design, answer } = useStore(project.state);
  const problems = answer?.ok === false ? answer.problems : (design?.faults ?? []);
  const draw = (path: string) => <FileField key={path} path={path} project={project} schema={schema} />;
  const ribs = design?.ribs.length ?? 0;
  return (
    <>
      <Problems problems={problems} />
      <div class="halves">
        <div>
          <TurningDisc {...parts} />
          {ribs > 0 ? <p class="hint">{words.disc.ribs(ribs)}</p> : null}
          <SavePicture {...parts} name="disc" words={words.disc.savePicture} />
        </div>
        <div class="fields">
          <section class="panel fields">
            <h2>{words.disc.what}</h2>
            {need.map(draw)}
          </section>
          <CodeChoice {...parts} />
          <section class="panel fields">
            <h2>{words.disc.size}</h2>
            {size.map(draw)}
          </section>
          <section class="panel fields">
            <h2>{words.disc.shaft}</h2>
            <GroupField project={project} schema={schema} path="disc.bore" />
            <GroupField project={project} schema={schema} path="disc.hub" />
            <details>
              <summary>{words.fields.names['disc.notch']}</summary>
              <div class="fields">{notch.map(draw)}</div>
            </details>
          </section>
          <MakingFields project={project} schema={schema} />
          <StripFields project={project} schema={schema} />
          <OwnWords project={project} />
        </div>
      </div>
      <SolidsPanel {...parts} />
      <Problems problems={design?.warnings ?? []} isNote />
      <Verdict says={answer === null ? 'wait' : problems.length === 0 ? 'yes' : 'no'} next="head">
        {answer === null ? words.disc.saysWait : null}
        {answer !== null && (design === null || problems.length > 0) ? words.disc.saysNo : null}
        {answer !== null && design !== null && problems.length === 0
          ? words.disc.says(
              design.instrument.need.positions,
              shownDegrees(360 / design.instrument.need.positions),
              design.trackCount,
            )
          : null}
      </Verdict>
    </>
  );
}
