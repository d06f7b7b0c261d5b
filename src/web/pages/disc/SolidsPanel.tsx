import { useEffect, useRef, useState } from 'preact/hooks';
import type { Answer } from '../../engine/answer.ts';
import type { SolidsView, SolidView } from '../../engine/solidsView.ts';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { shownNumber } from '../../parts/numbers.ts';
import { Problems } from '../../parts/Problems.tsx';
import { filesOf } from '../../project/project.ts';
import { useStore } from '../../project/store.ts';
import type { PageParts } from '../../shell/pageParts.ts';
import { words } from '../../words/en.ts';
import type { Scene } from './scene.ts';

/** The disc is one thing, of as many bodies as it has materials. */
const DISC = 'disc';

/** The disc and every printed part in space, and the same in words. */
export function SolidsPanel({ project, engine }: Pick<PageParts, 'project' | 'engine'>) {
  const { disc } = words;
  const text = useStore(project.state, ({ history }) => history.text);
  const [isOpen, open] = useState(false);
  const [answer, setAnswer] = useState<Answer<SolidsView> | null>(null);
  useEffect(() => {
    if (!isOpen) return;
    let isWanted = true;
    const timer = setTimeout(async () => {
      const found = await engine.solids(filesOf(project.state.get()));
      if (isWanted) setAnswer(found);
    }, 400);
    return () => {
      isWanted = false;
      clearTimeout(timer);
    };
  }, [isOpen, text]);
  return (
    <section class="panel solids">
      <h2>{disc.solidsTitle}</h2>
      {isOpen ? null : (
        <button type="button" onClick={() => open(true)}>
          {disc.solidsShow}
        </button>
      )}
      {isOpen && answer === null ? <p role="status">{disc.solidsWait}</p> : null}
      {answer?.ok === false ? <Problems problems={answer.problems} isNote /> : null}
      {answer?.ok ? <Solids view={answer.value} /> : null}
    </section>
  );
}

function Solids({ view }: { readonly view: SolidsView }) {
  const { disc } = words;
  const [name, choose] = useState(DISC);
  const known = [DISC, ...view.parts.map((part) => part.name)];
  const chosen = known.includes(name) ? name : DISC;
  const bodies = chosen === DISC ? view.disc : view.parts.filter((part) => part.name === chosen);
  return (
    <>
      <Problems problems={view.problems} isNote />
      <ChoiceField
        name={disc.solidsWhich}
        hint={disc.solidsHint}
        value={chosen}
        choices={known.map((value) => ({ value, text: value }))}
        onChange={choose}
      />
      <Space bodies={bodies} name={chosen} />
      <details>
        <summary>{disc.solidsTable}</summary>
        <div class="scroll-x" tabIndex={0} role="region" aria-label={disc.solidsTable}>
          <PartsTable bodies={[...view.disc, ...view.parts]} />
        </div>
      </details>
    </>
  );
}

function PartsTable({ bodies }: { readonly bodies: readonly SolidView[] }) {
  const { disc } = words;
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">{disc.solidsPart}</th>
          <th scope="col">{disc.solidsSize} [mm]</th>
          <th scope="col">{disc.solidsTriangles}</th>
        </tr>
      </thead>
      <tbody>
        {bodies.map(({ name, sizeMm, mesh }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{sizeMm.map((size) => shownNumber(size, 1)).join(' × ')}</td>
            <td>{shownNumber(mesh.triangles.length / 3, 0)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Space({ bodies, name }: { readonly bodies: readonly SolidView[]; readonly name: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const scene = useRef<Scene | null>(null);
  const shown = useRef(bodies);
  shown.current = bodies;
  const [cannot, setCannot] = useState(false);
  useEffect(() => {
    let isWanted = true;
    void (async () => {
      // What draws in space is large: it is fetched when someone looks.
      const { openScene } = await import('./scene.ts');
      if (!isWanted || !canvas.current) return;
      scene.current = openScene(canvas.current);
      if (scene.current === null) setCannot(true);
      else scene.current.show(shown.current);
    })();
    return () => {
      isWanted = false;
      scene.current?.end();
      scene.current = null;
    };
  }, []);
  useEffect(() => scene.current?.show(bodies), [bodies]);
  if (cannot) return <p role="status">{words.disc.solidsNone}</p>;
  return <canvas ref={canvas} role="img" tabIndex={0} aria-label={words.disc.solidsName(name)} />;
}
