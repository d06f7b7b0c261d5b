import { parentPort } from 'node:worker_threads';
import { buildBatch, headOfShared, type SharedDesign } from '../../core/proof/index.ts';
import type { HeadPlan } from '../../core/head/index.ts';
import type { BuildTask } from '../../ports/index.ts';

/** The last design made, since a worker makes many batches of one. */
let last: { readonly text: string; readonly head: HeadPlan } | null = null;

function headOf(design: SharedDesign): HeadPlan {
  const text = JSON.stringify(design);
  if (last?.text !== text) last = { text, head: headOfShared(design) };
  return last.head;
}

parentPort?.on('message', ({ id, task }: { id: number; task: BuildTask }) => {
  try {
    parentPort?.postMessage({ id, tally: buildBatch(headOf(task.design), task.request, task.batch) });
  } catch (error) {
    parentPort?.postMessage({ id, error: error instanceof Error ? error.message : String(error) });
  }
});
