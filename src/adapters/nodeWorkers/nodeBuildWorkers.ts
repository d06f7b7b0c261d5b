import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { BuildTally } from '../../core/proof/index.ts';
import type { BuildTask, BuildWorkers } from '../../ports/index.ts';

interface Waiting {
  readonly task: BuildTask;
  readonly done: (tally: BuildTally) => void;
  readonly failed: (reason: Error) => void;
}

type Answer = { readonly id: number; readonly tally?: BuildTally; readonly error?: string };

/** The worker's own file, as the build puts it beside this one. */
const WORKER = new URL('./buildWorker.js', import.meta.url);

/**
 * Worker threads that make virtual builds; each is started with the first task that has no idle hand.
 *
 * @param hands - Threads at most; as many as the machine can run beside each other where left out. [-]
 */
export function nodeBuildWorkers(hands = availableParallelism()): BuildWorkers {
  const idle: Worker[] = [];
  const all = new Set<Worker>();
  const busy = new Map<Worker, Waiting>();
  const queue: Waiting[] = [];

  function started(): Worker {
    const worker = new Worker(WORKER);
    all.add(worker);
    worker.unref();
    worker.on('message', ({ tally, error }: Answer) => {
      const waiting = busy.get(worker)!;
      busy.delete(worker);
      idle.push(worker);
      if (tally) waiting.done(tally);
      else waiting.failed(new Error(error));
      next();
    });
    worker.on('error', (reason) => {
      all.delete(worker);
      busy.get(worker)?.failed(reason instanceof Error ? reason : new Error(String(reason)));
      busy.delete(worker);
      next();
    });
    return worker;
  }

  function next(): void {
    while (queue.length > 0) {
      const worker = idle.pop() ?? (all.size < hands ? started() : null);
      if (!worker) return;
      const waiting = queue.shift()!;
      busy.set(worker, waiting);
      worker.postMessage({ id: waiting.task.batch, task: waiting.task });
    }
  }

  return {
    tally: (task) =>
      new Promise((done, failed) => {
        queue.push({ task, done, failed });
        next();
        // A thread that waits must not keep the program alive, one that works must.
        for (const worker of busy.keys()) worker.ref();
      }),
    close: async () => {
      await Promise.all([...all].map((worker) => worker.terminate()));
      all.clear();
    },
  };
}
