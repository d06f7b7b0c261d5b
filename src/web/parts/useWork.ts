import { useState } from 'preact/hooks';
import type { Answer } from '../engine/answer.ts';

/** A long piece of work that the reader starts. */
export interface Work<T> {
  readonly isRunning: boolean;
  readonly answer: Answer<T> | null;
  /** A fault of ours, told as it is. */
  readonly fault: string | null;
  start(ask: () => Promise<Answer<T>>): Promise<void>;
}

/** Work with its answer; of two that run at once the later one counts. */
export function useWork<T>(): Work<T> {
  const [state, setState] = useState<Omit<Work<T>, 'start'>>({ isRunning: false, answer: null, fault: null });
  const [run] = useState({ last: 0 });
  return {
    ...state,
    async start(ask) {
      const mine = ++run.last;
      setState((was) => ({ ...was, isRunning: true, fault: null }));
      const next = await ask().then(
        (answer) => ({ isRunning: false, answer, fault: null }),
        (reason: unknown) => ({ isRunning: false, answer: null, fault: String(reason) }),
      );
      if (mine === run.last) setState(next);
    },
  };
}
