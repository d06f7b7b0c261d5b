import { useId, useState } from 'preact/hooks';
import type { FitChoice } from '../../engine/fitView.ts';
import { readNumber } from '../../parts/numbers.ts';
import { RecordTurn } from '../../parts/RecordTurn.tsx';
import { words } from '../../words/en.ts';
import { recordingOfText, recordingsOf } from './recordings.ts';

interface RecordingInputProps {
  /** Speed of the controller's line. [bit/s] */
  readonly baud: number;
  readonly isRunning: boolean;
  onStart(choice: FitChoice): void;
}

interface SourcesProps {
  readonly files: readonly File[];
  readonly pasted: string;
  onFiles(files: FileList | null): void;
  onPaste(text: string): void;
}

/** Files to choose, or lines to paste. */
function Sources({ files, pasted, onFiles, onPaste }: SourcesProps) {
  const { fit } = words;
  const id = useId();
  return (
    <>
      <div class="field">
        <label for={`${id}-files`}>{fit.drop}</label>
        <input
          id={`${id}-files`}
          type="file"
          multiple
          aria-describedby={`${id}-hint`}
          onChange={(event) => onFiles(event.currentTarget.files)}
        />
        <p class="hint" id={`${id}-hint`}>
          {files.length > 0 ? fit.chosen(files.map(({ name }) => name).join(', ')) : fit.dropHint}
        </p>
      </div>
      <details>
        <summary>{fit.pasteTitle}</summary>
        <label class="visually-hidden" for={`${id}-paste`}>
          {fit.paste}
        </label>
        <textarea
          id={`${id}-paste`}
          class="file lines"
          rows={8}
          value={pasted}
          onInput={(event) => onPaste(event.currentTarget.value)}
        />
      </details>
    </>
  );
}

interface StartAngleProps {
  readonly text: string;
  readonly wrong: string | null;
  onChange(text: string): void;
}

/** Where the disc stood at the first line. */
function StartAngle({ text, wrong, onChange }: StartAngleProps) {
  const { fit } = words;
  const id = useId();
  return (
    <div class="field">
      <label for={`${id}-angle`}>{fit.startsAt}</label>
      <input
        id={`${id}-angle`}
        type="text"
        inputMode="decimal"
        value={text}
        aria-invalid={wrong !== null}
        aria-describedby={`${id}-angle-hint`}
        onInput={(event) => onChange(event.currentTarget.value)}
      />
      <p class={wrong === null ? 'hint' : 'wrong'} id={`${id}-angle-hint`}>
        {wrong ?? fit.startsAtHint}
      </p>
    </div>
  );
}

/** Where the recorded turn comes from: files, or lines that are pasted. */
export function RecordingInput({ baud, isRunning, onStart }: RecordingInputProps) {
  const { fit } = words;
  const [files, setFiles] = useState<readonly File[]>([]);
  const [pasted, setPasted] = useState('');
  const [startsAt, setStartsAt] = useState('');
  const [isEmpty, setEmpty] = useState(false);
  const take = (list: FileList | null | undefined): void => setFiles([...(list ?? [])]);
  const start = async (): Promise<void> => {
    const recordings =
      files.length > 0
        ? await recordingsOf(files)
        : pasted.trim() === ''
          ? []
          : recordingOfText(pasted, Date.now());
    setEmpty(recordings.length === 0);
    if (recordings.length > 0) onStart({ recordings, hints: {}, startsAtDeg: readNumber(startsAt) });
  };
  const wrongAngle =
    startsAt.trim() === '' || readNumber(startsAt) !== null ? null : words.fields.notNumber(startsAt);
  return (
    <section
      class="panel fields"
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault();
        take(event.dataTransfer?.files);
      }}
    >
      <p>{fit.how}</p>
      <Sources files={files} pasted={pasted} onFiles={take} onPaste={setPasted} />
      <RecordTurn baud={baud} onRecorded={setPasted} />
      <StartAngle text={startsAt} wrong={wrongAngle} onChange={setStartsAt} />
      <div class="row">
        <button
          type="button"
          class="first"
          disabled={isRunning || wrongAngle !== null}
          onClick={() => void start()}
        >
          {isRunning ? fit.running : fit.start}
        </button>
        <span role="status">{isEmpty ? fit.nothing : ''}</span>
      </div>
    </section>
  );
}
