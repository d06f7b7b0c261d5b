import { useEffect, useState } from 'preact/hooks';
import { familyNames } from '../../core/codes/index.ts';
import type { DesignView } from '../engine/designView.ts';
import type { Answer } from '../engine/answer.ts';
import { ChoiceField } from '../parts/ChoiceField.tsx';
import { Problems } from '../parts/Problems.tsx';
import { filesOf } from '../project/project.ts';
import { useStore } from '../project/store.ts';
import type { PageParts } from '../shell/pageParts.ts';
import { words } from '../words/en.ts';
import { DiscDial } from './DiscDial.tsx';
import type { FaultSettings } from './faults.ts';
import { LiveReadings } from './LiveReadings.tsx';
import type { Turn } from './turn.ts';
import { useLive } from './useLive.ts';

interface ComparedProps extends Pick<PageParts, 'engine' | 'project'> {
  readonly turn: Turn;
  readonly faults: FaultSettings;
}

/** The code that says most beside another. */
function rivalOf(code: string): string {
  return code === 'natural-binary' ? 'reflected-gray' : 'natural-binary';
}

/** The same need with another code, on the same shaft with the same faults. */
export function Compared({ engine, project, turn, faults }: ComparedProps) {
  const state = useStore(project.state);
  const own = state.design?.instrument.disc.code ?? 'reflected-gray';
  const [chosen, choose] = useState<string | null>(null);
  const [other, setOther] = useState<Answer<DesignView> | null>(null);
  const code = chosen ?? rivalOf(own);
  const { text } = state.history;
  useEffect(() => {
    let isWanted = true;
    void (async () => {
      const files = filesOf(project.state.get());
      const changed = await engine.setFields(text, [
        { path: ['disc', 'code'], value: code },
        { path: ['disc', 'codeOptions'], value: undefined },
      ]);
      const answer = await engine.design({ ...files, files: { ...files.files, [files.path]: changed } });
      if (isWanted) setOther(answer);
    })();
    return () => void (isWanted = false);
  }, [text, code]);
  const view = other?.ok ? other.value : null;
  const model = useLive(view, turn, faults);
  const problems = other?.ok === false ? other.problems : (view?.faults ?? []);
  return (
    <section class="compared">
      <ChoiceField
        name={words.disc.compareWith}
        hint={words.disc.compareHint}
        value={code}
        choices={familyNames.map((name) => ({ value: name, text: name }))}
        onChange={choose}
      />
      <Problems problems={problems} isNote />
      {view && model ? (
        <>
          <DiscDial view={view} model={model} turn={turn} name={words.disc.otherDial(code)} />
          <LiveReadings model={model} turn={turn} />
        </>
      ) : null}
    </section>
  );
}
