import type { Remote } from 'comlink';
import type { FieldEdit, FieldValue } from '../../core/instrument/index.ts';
import type { Answer } from '../engine/answer.ts';
import type { DesignView } from '../engine/designView.ts';
import type { ProjectFiles } from '../engine/asked.ts';
import type { Engine } from '../engine/engine.ts';
import type { FileTexts } from '../engine/memoryFiles.ts';
import { begun, changed, redone, undone, type History } from './history.ts';
import type { ProjectHome, StoredProject } from './projectHome.ts';
import { keepInto, savingInto, type Saving } from './saving.ts';
import { store, type Store } from './store.ts';

/** Everything the pages know of the project. */
export interface Project {
  readonly path: string;
  readonly history: History;
  readonly beside: FileTexts;
  readonly saving: Saving;
  /** The design of the text; the last one that could be read where the text cannot be now. */
  readonly design: DesignView | null;
  /** What reading the text gave; `null` before the first reading. */
  readonly answer: Answer<DesignView> | null;
  /** What the text says, field by field, in range or not; no defaults. */
  readonly fields: Readonly<Record<string, unknown>>;
}

/** Changes of the same field within this time are one step of undo. [ms] */
const SAME_EDIT_MS = 1500;

/** The files that the engine is asked about. */
export function filesOf({ path, history, beside }: Project): ProjectFiles {
  return { path, files: { ...beside, [path]: history.text } };
}

/** Reads the design again after each change; an answer about an older text is let go. */
function reader(engine: Remote<Engine>, state: Store<Project>): () => Promise<void> {
  let asked = 0;
  return async () => {
    const ask = ++asked;
    const fields = await engine.fieldValues(state.get().history.text);
    if (ask !== asked) return;
    state.set({ ...state.get(), fields });
    const answer = await engine.design(filesOf(state.get()));
    if (ask !== asked) return;
    state.set({ ...state.get(), answer, ...(answer.ok ? { design: answer.value } : {}) });
  };
}

/** Keeps a file in the home and shows it to the design. */
function addingBeside(home: ProjectHome, state: Store<Project>, read: () => Promise<void>) {
  return async (wished: string, content: string): Promise<string | null> => {
    const name = await keepInto(home, wished, content);
    if (name === null) return null;
    state.set({ ...state.get(), beside: { ...state.get().beside, [name]: content } });
    void read();
    return name;
  };
}

/** Tells whether a change goes on with the one before. */
function sameEdits(): (field: string) => boolean {
  let last = { field: '', atMs: -Infinity };
  return (field) => {
    const nowMs = performance.now();
    const isSame = field !== '' && field === last.field && nowMs - last.atMs < SAME_EDIT_MS;
    last = { field, atMs: nowMs };
    return isSame;
  };
}

/** The open project: one text, everything else follows from it. */
export function openProject(engine: Remote<Engine>, home: ProjectHome, first: StoredProject) {
  const state = store<Project>({
    path: first.path,
    history: begun(first.text),
    beside: first.beside,
    saving: 'saved',
    design: null,
    answer: null,
    fields: {},
  });
  const patch = (part: Partial<Project>): void => state.set({ ...state.get(), ...part });
  const now = () => ({ path: state.get().path, text: state.get().history.text });
  const saver = savingInto(home, now, (saving) => patch({ saving }), first.version);
  const read = reader(engine, state);
  const isSameEdit = sameEdits();

  function become(history: History): void {
    if (history === state.get().history) return;
    patch({ history });
    saver.later();
    void read();
  }
  async function takeHomes(): Promise<void> {
    const stored = await home.load().catch(() => null);
    if (stored === null) return patch({ saving: 'changed-elsewhere' });
    patch({ history: changed(state.get().history, stored.text), beside: stored.beside });
    saver.shows(stored.version);
    void read();
  }

  /** What the home holds: where nothing of one's own waits to be saved, the page follows it. */
  function homeHolds(version: string | null): void {
    if (state.get().saving !== 'saved' || version === saver.version()) return;
    if (version === null) patch({ saving: 'changed-elsewhere' });
    else void takeHomes();
  }
  home.watch(homeHolds);
  void read();
  return {
    state,
    /** Whether the project lies in a folder behind the server. */
    isFolder: home.kind === 'folder',
    /** Puts a whole new text in the place of the old one; undo brings the old one back. */
    write(text: string, field = ''): void {
      become(changed(state.get().history, text, isSameEdit(field)));
    },
    /** Sets one field, comments kept; `undefined` takes it away. */
    async set(path: readonly string[], value: FieldValue): Promise<void> {
      this.write(await engine.setField(state.get().history.text, path, value), path.join('.'));
    },
    /** Sets several fields in one step of undo. */
    async setAll(edits: readonly FieldEdit[]): Promise<void> {
      this.write(await engine.setFields(state.get().history.text, edits));
    },
    /** Puts a file beside the instrument file, such as the maker's own words; see `keepInto`. */
    addBeside: addingBeside(home, state, read),
    undo: (): void => become(undone(state.get().history)),
    redo: (): void => become(redone(state.get().history)),
    /** Shows what someone else has saved in the home; undo brings the own text back. */
    takeHomes,
    /** Saves over what someone else has saved. */
    async keepMine(): Promise<void> {
      const stored = await home.load().catch(() => undefined);
      if (stored !== undefined) await saver.over(stored?.version ?? null);
    },
  };
}

/** The verbs of the open project. */
export type OpenProject = ReturnType<typeof openProject>;
