import { wrap } from 'comlink';
import type { Engine } from './engine/engine.ts';
import { browserHome, type ProjectHome } from './project/projectHome.ts';

/** Starts the library in a worker of its own. */
export function startEngine() {
  return wrap<Engine>(
    new Worker(new URL('./engine/worker.ts', import.meta.url), { type: 'module', name: 'vanewright' }),
  );
}

/** Where the project lives: this browser, as long as no server says otherwise. */
export async function chooseHome(): Promise<ProjectHome> {
  return browserHome;
}
