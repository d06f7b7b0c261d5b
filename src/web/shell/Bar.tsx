import { useStore } from '../project/store.ts';
import { saveFile } from '../parts/saveFile.ts';
import { words } from '../words/en.ts';
import { hrefOf } from './route.ts';
import type { PageParts } from './pageParts.ts';
import { showTheme, theme } from './theme.ts';

/** The bar above every page: the instrument, undo and redo, the file in and out, the look. */
export function Bar({ project }: Pick<PageParts, 'project'>) {
  const { history, path, saving, design } = useStore(project.state);
  const look = useStore(theme);
  const { shell } = words;
  const other = look === 'light' ? 'dark' : 'light';
  const open = async (file: File | undefined): Promise<void> => {
    if (file) project.write(await file.text());
  };
  return (
    <header class="bar">
      <div class="name">
        {design?.instrument.name ?? path}
        <small role="status">{project.isFolder ? shell.saving[saving] : shell.savedInBrowser}</small>
      </div>
      {saving === 'changed-elsewhere' ? (
        <>
          <button type="button" onClick={() => void project.takeHomes()}>
            {shell.takeTheirs}
          </button>
          <button type="button" onClick={() => void project.keepMine()}>
            {shell.keepMine}
          </button>
        </>
      ) : null}
      <button type="button" disabled={history.past.length === 0} onClick={project.undo}>
        {shell.undo}
      </button>
      <button type="button" disabled={history.future.length === 0} onClick={project.redo}>
        {shell.redo}
      </button>
      <a class="button" href={hrefOf('start')}>
        {shell.pages.start}
      </a>
      <a class="button" href={hrefOf('file')}>
        {shell.pages.file}
      </a>
      <label class="button">
        {shell.open}
        <input
          class="visually-hidden"
          type="file"
          accept=".yaml,.yml,.json"
          aria-label={shell.openName}
          onChange={(event) => void open(event.currentTarget.files?.[0])}
        />
      </label>
      <button type="button" onClick={() => saveFile('instrument.yaml', history.text)}>
        {shell.download}
      </button>
      <button type="button" aria-label={shell.theme(shell[other])} onClick={() => showTheme(other)}>
        {shell[other]}
      </button>
    </header>
  );
}
