import { useEffect, useId, useMemo, useState } from 'preact/hooks';
import { useStore } from '../project/store.ts';
import { words } from '../words/en.ts';
import { readsPorts, recordTurn, serverPorts, type OfferedPort, type TurnRecorder } from './recordTurn.ts';

interface RecordTurnProps {
  /** Speed of the controller's line. [bit/s] */
  readonly baud: number;
  /** Hears the recording when it is stopped. */
  onRecorded(text: string): void;
}

/** Counts whole lines as they come. */
function Lines({ recorder }: { readonly recorder: TurnRecorder }) {
  const count = useStore(recorder.text, (text) => text.split('\n').length - 1);
  return <span role="status">{words.turn.lines(count)}</span>;
}

/** Stands for the browser's own ports in the choice. */
const BROWSER = '';

/** Records a turn from a port: the browser's own where it has them, else one of the server's. */
export function RecordTurn({ baud, onRecorded }: RecordTurnProps) {
  const { turn } = words;
  const id = useId();
  const recorder = useMemo(() => recordTurn(baud), [baud]);
  const [ports, setPorts] = useState<readonly OfferedPort[]>([]);
  const [wanted, choose] = useState<string | null>(null);
  const [isOn, setOn] = useState(false);
  const [wrong, setWrong] = useState('');
  useEffect(() => {
    serverPorts().then(setPorts, () => {});
    return () => void recorder.stop();
  }, [recorder]);
  const choices = [
    ...(readsPorts() ? [{ path: BROWSER, label: turn.browser }] : []),
    ...ports.map(({ path, label }) => ({ path, label: label === '' ? path : `${path} (${label})` })),
  ];
  const chosen = wanted ?? choices[0]?.path;
  if (chosen === undefined) return <p class="hint">{turn.none}</p>;
  const start = async (): Promise<void> => {
    setWrong('');
    try {
      await recorder.start(chosen === BROWSER ? null : chosen);
      setOn(true);
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      setWrong(turn.failed(why === '' ? turn.away : why));
    }
  };
  const stop = async (): Promise<void> => {
    setOn(false);
    onRecorded(await recorder.stop());
  };
  return (
    <div class="field">
      <label for={id}>{turn.title}</label>
      <div class="row">
        <select
          id={id}
          value={chosen}
          disabled={isOn}
          onChange={(event) => choose(event.currentTarget.value)}
        >
          {choices.map(({ path, label }) => (
            <option value={path}>{label}</option>
          ))}
        </select>
        <button type="button" onClick={() => void (isOn ? stop() : start())}>
          {isOn ? turn.stop : turn.start}
        </button>
      </div>
      {isOn ? <Lines recorder={recorder} /> : null}
      {wrong === '' ? null : (
        <p class="wrong" role="alert">
          {wrong}
        </p>
      )}
    </div>
  );
}
