import type { Remote } from 'comlink';
import type { Engine } from './engine.ts';

/** An engine in a worker of its own, and how to end it. */
export interface StartedEngine {
  readonly engine: Remote<Engine>;
  end(): void;
}

/** Work of one page that only ever matters for the file as it is now. */
export interface Background {
  /**
   * Runs work once what runs now is through; of those that wait only the newest is run.
   *
   * Long work is stopped as soon as anything newer comes; short work is let through, so that a slider is followed.
   *
   * @returns `null` where newer work has come before it was through.
   */
  run<T>(work: (engine: Remote<Engine>) => Promise<T>, size: 'short' | 'long'): Promise<T | null>;
  /** Stops whatever runs. */
  stop(): void;
}

interface Job {
  readonly size: 'short' | 'long';
  /** @param through - Called before the answer is given, so that whoever hears it finds the worker free. */
  start(engine: Remote<Engine>, through: () => void): void;
  drop(): void;
}

/** A second worker for work that would keep the page's own engine busy; started when first needed. */
export function backgroundOf(begin: () => StartedEngine): Background {
  let started: StartedEngine | null = null;
  let running: Job | null = null;
  let waiting: Job | null = null;

  function next(): void {
    running = waiting;
    waiting = null;
    if (running === null) return;
    const job = running;
    started ??= begin();
    job.start(started.engine, () => {
      if (running === job) next();
    });
  }
  function stopRunning(): void {
    started?.end();
    started = null;
    running?.drop();
    running = null;
  }
  return {
    run: (work, size) =>
      new Promise((resolve, reject) => {
        waiting?.drop();
        waiting = {
          size,
          start: (engine, through) =>
            void work(engine).then(
              (value) => (through(), resolve(value)),
              (fault: unknown) => (through(), reject(fault)),
            ),
          drop: () => resolve(null),
        };
        if (running?.size === 'long') stopRunning();
        if (running === null) next();
      }),
    stop() {
      waiting?.drop();
      waiting = null;
      stopRunning();
    },
  };
}
