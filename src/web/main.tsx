import { render } from 'preact';
import { openProject } from './project/project.ts';
import { App } from './shell/App.tsx';
import { showTheme, theme } from './shell/theme.ts';
import { background, chooseHome, startEngine } from './wire.ts';
import './look/shell.css';

async function start(): Promise<void> {
  showTheme(theme.get());
  const engine = startEngine();
  const home = await chooseHome();
  const [stored, schema, fresh] = await Promise.all([
    home.load(),
    engine.fields(),
    engine.startingFile('my vane'),
  ]);
  const first = stored ?? { path: 'instrument.yaml', text: fresh, version: null, beside: {} };
  const project = openProject(engine, home, first);
  render(
    <App engine={engine} background={background} project={project} schema={schema} />,
    document.getElementById('workbench')!,
  );
}

void start();
