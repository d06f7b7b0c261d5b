import { render } from 'preact';
import { openProject } from './project/project.ts';
import { Problems } from './parts/Problems.tsx';
import { Refused } from './server/askServer.ts';
import { App, Opening } from './shell/App.tsx';
import { TokenForm } from './shell/Connection.tsx';
import { hrefOf } from './shell/route.ts';
import { showTheme, theme } from './shell/theme.ts';
import { background, chooseHome, startEngine } from './wire.ts';
import './look/shell.css';

const root = document.getElementById('workbench')!;

/** Asks until the token is right, where one is needed. */
async function letIn<T>(ask: () => Promise<T>): Promise<T> {
  for (;;) {
    try {
      return await ask();
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      if (error.status !== 401) {
        render(<Problems problems={error.problems} />, root);
        throw error;
      }
      await new Promise<void>((done) => render(<TokenForm onToken={done} />, root));
    }
  }
}

async function start(): Promise<void> {
  showTheme(theme.get());
  render(<Opening />, root);
  const engine = startEngine();
  const home = await letIn(chooseHome);
  const [stored, schema, fresh] = await Promise.all([
    home.load(),
    engine.fields(),
    engine.startingFile(home.name),
  ]);
  const first = stored ?? { path: 'instrument.yaml', text: fresh, version: null, beside: {} };
  // Where there is nothing yet, the first question is what the maker has.
  if (stored === null && location.hash === '') location.hash = hrefOf('start');
  const project = openProject(engine, home, first);
  render(<App engine={engine} background={background} project={project} schema={schema} />, root);
}

void start();
