import { wrap, type Remote } from 'comlink';
import { backgroundOf, type StartedEngine } from './engine/background.ts';
import type { Engine } from './engine/engine.ts';
import { folderHome, type ServerProject } from './project/folderHome.ts';
import { browserHome, type ProjectHome } from './project/projectHome.ts';
import { connection, documentOf, servedRecord } from './server/askServer.ts';

function startWorker(): StartedEngine {
  const worker = new Worker(new URL('./engine/worker.ts', import.meta.url), {
    type: 'module',
    name: 'vanewright',
  });
  return { engine: wrap<Engine>(worker), end: () => worker.terminate() };
}

/** Starts the library in a worker of its own. */
export function startEngine(): Remote<Engine> {
  return startWorker().engine;
}

/** A second worker, for work that takes long. */
export const background = backgroundOf(startWorker);

/** Where the project lives: a folder when the page comes from our server, else this browser. */
export async function chooseHome(): Promise<ProjectHome> {
  if (connection.get() === 'none') return browserHome;
  const { folder, record } = await documentOf<ServerProject>('project');
  servedRecord.set(record);
  return folderHome(folder);
}
