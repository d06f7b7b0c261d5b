import { examples, type ExampleName } from '../../project/examples.ts';
import type { PageParts } from '../../shell/pageParts.ts';
import { hrefOf } from '../../shell/route.ts';
import { words } from '../../words/en.ts';

const names = Object.keys(examples) as ExampleName[];

/** The examples, to open and to change. */
export function Examples({ project }: Pick<PageParts, 'project'>) {
  const text = words.start;
  const open = (name: ExampleName): void => {
    project.write(examples[name]);
    location.hash = hrefOf('disc');
  };
  return (
    <section class="panel">
      <h2>{text.examples}</h2>
      <p class="hint">
        {text.invented} {text.replaces}
      </p>
      <ul class="examples">
        {names.map((name) => (
          <li key={name}>
            <p>{text.exampleTexts[name]}</p>
            <button type="button" onClick={() => open(name)}>
              {text.open(name)}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
