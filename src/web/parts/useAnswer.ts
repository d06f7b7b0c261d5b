import { useEffect, useState } from 'preact/hooks';
import type { Answer } from '../engine/answer.ts';
import type { ProjectFiles } from '../engine/asked.ts';
import { filesOf, type OpenProject } from '../project/project.ts';
import { useStore } from '../project/store.ts';

/** What the engine says of the files as they are; the answer before stays until there is a newer one. */
export function useAnswer<T>(
  project: OpenProject,
  ask: (files: ProjectFiles) => Promise<Answer<T> | null>,
  restMs: number,
): Answer<T> | null {
  const { history, beside } = useStore(project.state);
  const [answer, setAnswer] = useState<Answer<T> | null>(null);
  useEffect(() => {
    let isWanted = true;
    const timer = setTimeout(async () => {
      const found = await ask(filesOf(project.state.get()));
      if (isWanted && found !== null) setAnswer(found);
    }, restMs);
    return () => {
      isWanted = false;
      clearTimeout(timer);
    };
  }, [history.text, beside]);
  return answer;
}
