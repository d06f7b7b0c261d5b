import { useEffect, useMemo, useState } from 'preact/hooks';
import { shownNumber } from '../parts/numbers.ts';
import { Slider } from '../parts/Slider.tsx';
import { useStore } from '../project/store.ts';
import type { PageParts } from '../shell/pageParts.ts';
import { words } from '../words/en.ts';
import { Compared } from './Compared.tsx';
import { DiscDial } from './DiscDial.tsx';
import { FaultSliders } from './FaultSliders.tsx';
import { NO_FAULTS } from './faults.ts';
import { LiveReadings } from './LiveReadings.tsx';
import { turningShaft } from './turn.ts';
import { useLive } from './useLive.ts';

/** The disc of the file under the hand: it turns, reads, and misreads when something is made wrong. */
export function TurningDisc({ engine, project }: Pick<PageParts, 'engine' | 'project'>) {
  const { design } = useStore(project.state);
  const turn = useMemo(() => turningShaft(), []);
  const [faults, setFaults] = useState(NO_FAULTS);
  const [speed, setSpeed] = useState(60);
  const [isTurning, setTurning] = useState(false);
  const [isCompared, compare] = useState(false);
  const model = useLive(design, turn, faults);
  useEffect(() => () => turn.spin(0), [turn]);
  // A hand on the disc stops it.
  useEffect(() => turn.watch(() => void (turn.spinDegPerS === 0 && setTurning(false))), [turn]);
  const spin = (isOn: boolean, degPerS: number): void => {
    turn.spin(isOn ? degPerS : 0);
    setTurning(isOn);
    setSpeed(degPerS);
  };
  if (!design || !model) return null;
  const { disc } = words;
  return (
    <div class="turning-disc">
      <DiscDial view={design} model={model} turn={turn} name={disc.dialName} />
      <p id="dial-hint">{disc.turnHint}</p>
      <div class="spin">
        <button type="button" aria-pressed={isTurning} onClick={() => spin(!isTurning, speed)}>
          {isTurning ? disc.stop : disc.spin}
        </button>
        <Slider
          name={disc.speed}
          value={speed}
          least={5}
          most={720}
          step={5}
          shown={`${shownNumber(speed, 0)} °/s`}
          onSlide={(next) => spin(isTurning, next)}
        />
      </div>
      <LiveReadings model={model} turn={turn} />
      <FaultSliders head={model.head} faults={faults} onChange={setFaults} />
      <button type="button" aria-expanded={isCompared} onClick={() => compare(!isCompared)}>
        {isCompared ? disc.compareNoMore : disc.compare}
      </button>
      {isCompared ? <Compared engine={engine} project={project} turn={turn} faults={faults} /> : null}
    </div>
  );
}
