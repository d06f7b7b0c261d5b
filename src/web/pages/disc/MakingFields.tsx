import { useState } from 'preact/hooks';
import { possibleForms } from '../../../core/disc/index.ts';
import type { FieldValue } from '../../../core/instrument/index.ts';
import { FileField } from '../../parts/FileField.tsx';
import { GroupField } from '../../parts/GroupField.tsx';
import { useStore } from '../../project/store.ts';
import type { PageParts } from '../../shell/pageParts.ts';
import { words } from '../../words/en.ts';

type Parts = Pick<PageParts, 'project' | 'schema'>;

/** How the disc is made: process, form, and what drawings make up for. */
export function MakingFields({ project, schema }: Parts) {
  const { design } = useStore(project.state);
  const form = design?.form;
  const process = design?.instrument.disc.process.kind ?? 'fdm';
  const parts = { project, schema };
  /** A process takes the form along only where it can make it. */
  const changeProcess = (group: Record<string, unknown>): void => {
    const kinds = possibleForms(group['kind'] as typeof process);
    const keeps = form !== undefined && kinds.includes(form);
    void project.setAll([
      { path: ['disc', 'process'], value: group as FieldValue },
      ...(keeps ? [] : [{ path: ['disc', 'form'] }]),
    ]);
  };
  return (
    <section class="panel fields">
      <h2>{words.disc.process}</h2>
      <GroupField {...parts} path="disc.process" first={[]} onKind={changeProcess} />
      <GroupField {...parts} path="disc.form" kinds={possibleForms(process)} usual={form} />
      <FileField {...parts} path="disc.thicknessMm" />
      <details>
        <summary>{words.fields.more}</summary>
        <div class="fields">
          <FileField {...parts} path="disc.allowance" />
          <FileField {...parts} path="disc.densityKgPerM3" />
          <FileField {...parts} path="disc.windowLevel" />
        </div>
      </details>
    </section>
  );
}

/** The same code along a line, for gates and floats. */
export function StripFields({ project, schema }: Parts) {
  const { fields, design } = useStore(project.state);
  const strip = (fields['disc'] as Record<string, unknown> | undefined)?.['strip'];
  const isStrip = strip !== undefined && strip !== null;
  const turnMm = Math.round(Math.PI * (design?.instrument.disc.diameterMm ?? 90));
  return (
    <section class="panel fields">
      <h2>{words.disc.strip}</h2>
      <p class="hint">{words.disc.stripHint}</p>
      {isStrip ? (
        <>
          <FileField project={project} schema={schema} path="disc.strip.turnLengthMm" />
          <FileField project={project} schema={schema} path="disc.strip.leadMm" />
        </>
      ) : null}
      <button
        type="button"
        onClick={() =>
          void project.set(['disc', 'strip'], isStrip ? undefined : { turnLengthMm: Math.max(20, turnMm) })
        }
      >
        {isStrip ? words.disc.stripRemove : words.disc.stripAdd}
      </button>
    </section>
  );
}

/** The maker's own words, from a file that lies beside the instrument file. */
export function OwnWords({ project }: Pick<PageParts, 'project'>) {
  const { beside } = useStore(project.state);
  const [isRefused, refuse] = useState(false);
  const open = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    const name = await project.addBeside(file.name, await file.text());
    refuse(name === null);
    if (name === null) return;
    await project.setAll([
      { path: ['disc', 'code'], value: 'own-words' },
      { path: ['disc', 'codeFile'], value: name },
      { path: ['disc', 'codeOptions'] },
    ]);
  };
  const names = Object.keys(beside).filter((name) => /\.(csv|json)$/i.test(name));
  return (
    <section class="panel">
      <h2>{words.disc.ownWords}</h2>
      <p class="hint">{words.disc.ownWordsHint}</p>
      {names.map((name) => (
        <p key={name}>{words.disc.ownWordsHave(name)}</p>
      ))}
      {isRefused ? (
        <p class="wrong" role="alert">
          {words.disc.ownWordsRefused}
        </p>
      ) : null}
      <label class="button">
        {words.disc.ownWordsOpen}
        <input
          class="visually-hidden"
          type="file"
          accept=".csv,.json,.txt"
          onChange={(event) => void open(event.currentTarget.files?.[0])}
        />
      </label>
    </section>
  );
}
