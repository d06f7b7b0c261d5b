import type { FitChoice, FittedView } from '../../engine/fitView.ts';
import { Picture } from '../../parts/Picture.tsx';
import { Problems } from '../../parts/Problems.tsx';
import { useWork } from '../../parts/useWork.ts';
import { Verdict } from '../../parts/Verdict.tsx';
import { filesOf } from '../../project/project.ts';
import { useStore } from '../../project/store.ts';
import type { PageParts } from '../../shell/pageParts.ts';
import { words } from '../../words/en.ts';
import { MadeFiles } from '../make/MadeFiles.tsx';
import '../make/make.css';
import { CertificateTable, Causes, Told } from './Found.tsx';
import { RecordingInput } from './RecordingInput.tsx';
import './fit.css';

interface FoundProps extends Pick<PageParts, 'project'> {
  readonly found: FittedView;
}

/** Everything that the turn told, and the offer to write it into the file. */
function Found({ found, project }: FoundProps) {
  const { fit } = words;
  const { history } = useStore(project.state);
  const isWritten = found.text !== null && history.text === found.text;
  return (
    <>
      <Causes causes={found.causes} />
      <Told unknowns={found.unknowns} changes={found.changes} repairs={found.repairs} />
      <section class="panel">
        <h2>{fit.picturesTitle}</h2>
        {found.pictures.map((svg, index) => (
          <Picture key={index} svg={svg} name={`as-built-${index + 1}`} />
        ))}
      </section>
      <CertificateTable certificate={found.certificate} />
      <MadeFiles files={found.files} />
      {found.text === null ? null : (
        <div class="row">
          <button type="button" class="first" disabled={isWritten} onClick={() => project.write(found.text!)}>
            {fit.apply}
          </button>
          <span role="status">{isWritten ? fit.applied : ''}</span>
        </div>
      )}
    </>
  );
}

/** Of a file that cannot be read just now. [bit/s] */
const USUAL_BAUD = 57_600;

/** You turned the finished build once: what is wrong, and how is it to be read? */
export function FitPage({ engine, project }: PageParts) {
  const work = useWork<FittedView>();
  const { answer, design } = useStore(project.state);
  const { fit } = words;
  const found = work.answer?.ok ? work.answer.value : null;
  const problems =
    work.answer?.ok === false ? work.answer.problems : answer?.ok === false ? answer.problems : [];
  const start = (choice: FitChoice): void =>
    void work.start(() => engine.fit(filesOf(project.state.get()), choice));
  return (
    <>
      <Problems problems={problems} />
      <RecordingInput
        baud={design?.instrument.controller.baud ?? USUAL_BAUD}
        isRunning={work.isRunning}
        onStart={start}
      />
      <p role="status">{work.fault ?? ''}</p>
      {found === null ? null : <Found found={found} project={project} />}
      <Verdict says={found === null ? 'wait' : found.verdict} next="log">
        {found === null
          ? fit.saysWait
          : `${found.verdict === 'yes' ? fit.saysYes : fit.saysNo} ${found.reasons.join(' ')}`}
      </Verdict>
    </>
  );
}
