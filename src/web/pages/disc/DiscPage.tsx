import { useEffect, useMemo } from 'preact/hooks';
import { DiscDial } from '../../dial/DiscDial.tsx';
import { LiveReadings } from '../../dial/LiveReadings.tsx';
import { liveModel } from '../../dial/liveModel.ts';
import { turningShaft } from '../../dial/turn.ts';
import { FileField } from '../../parts/FileField.tsx';
import { shownDegrees } from '../../parts/numbers.ts';
import { Problems } from '../../parts/Problems.tsx';
import { Verdict } from '../../parts/Verdict.tsx';
import { useStore } from '../../project/store.ts';
import type { PageParts } from '../../shell/pageParts.ts';
import { words } from '../../words/en.ts';

/** Fields of the page, in groups. */
const groups = [
  ['what', ['need.positions', 'disc.code', 'need.accuracyDeg']],
  [
    'size',
    [
      'disc.diameterMm',
      'disc.hubDiameterMm',
      'disc.bore.diameterMm',
      'disc.thicknessMm',
      'disc.webMm',
      'disc.rimMm',
    ],
  ],
] as const;

/** Which code, on what disc. */
export function DiscPage({ project, schema }: PageParts) {
  const { design, answer } = useStore(project.state);
  const turn = useMemo(() => turningShaft(), []);
  useEffect(() => () => turn.spin(0), [turn]);
  const model = useMemo(() => (design && design.faults.length === 0 ? liveModel(design) : null), [design]);
  const problems = answer?.ok === false ? answer.problems : (design?.faults ?? []);
  return (
    <>
      <Problems problems={problems} />
      <div class="halves">
        <div>
          {design && model ? (
            <>
              <DiscDial view={design} model={model} turn={turn} />
              <p id="dial-hint">{words.disc.turnHint}</p>
              <LiveReadings model={model} turn={turn} />
            </>
          ) : null}
        </div>
        <div class="fields">
          {groups.map(([title, paths]) => (
            <section class="panel fields" key={title}>
              <h2>{words.disc[title]}</h2>
              {paths.map((path) => (
                <FileField key={path} path={path} project={project} schema={schema} />
              ))}
            </section>
          ))}
        </div>
      </div>
      <Problems problems={design?.warnings ?? []} isNote />
      <Verdict says={answer === null ? 'wait' : problems.length === 0 ? 'yes' : 'no'} next="head">
        {design === null || problems.length > 0
          ? words.disc.saysNo
          : words.disc.says(
              design.instrument.need.positions,
              shownDegrees(360 / design.instrument.need.positions),
              model?.head.disc.tracks.length ?? 0,
            )}
      </Verdict>
    </>
  );
}
