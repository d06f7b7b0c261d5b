import { askServer, documentOf, Refused } from '../server/askServer.ts';
import { BESIDE_MOST_BYTES, namesFor, type ProjectHome } from './projectHome.ts';

/** The project as the server tells it. */
export interface ServerProject {
  readonly folder: string;
  readonly path: string;
  readonly text: string | null;
  readonly version: string | null;
  readonly beside: Readonly<Record<string, string>>;
  /** The record that is served too; `null` where there is none. */
  readonly record: string | null;
}

/** How often the file is looked at, for changes made elsewhere. [ms] */
const LOOK_EVERY_MS = 2000;

async function save(path: string, text: string, version: string | null) {
  const headers: HeadersInit = version === null ? { 'if-none-match': '*' } : { 'if-match': `"${version}"` };
  try {
    const query = new URLSearchParams({ path });
    const init = { method: 'PUT', body: text, headers };
    return await documentOf<{ readonly version: string }>(`project/file?${query}`, init);
  } catch (error) {
    if (!(error instanceof Refused) || error.status === 401) return 'away';
    return error.status === 409 ? 'changed' : 'refused';
  }
}

/** What lies in the folder under a name; `null` where it cannot be told. */
async function lyingAt(name: string): Promise<string | null> {
  const reply = await askServer(`project/file?${new URLSearchParams({ path: name })}`).catch(() => null);
  return reply && reply.text();
}

/** Writes a file under the first name that is free, or holds the same already. */
async function keep(wished: string, content: string) {
  if (new Blob([content]).size > BESIDE_MOST_BYTES) return 'refused';
  for (const name of namesFor(wished)) {
    const saved = await save(name, content, null);
    if (typeof saved === 'object' || (saved === 'changed' && (await lyingAt(name)) === content))
      return { name };
    if (saved !== 'changed') return saved;
  }
  return 'refused';
}

/** Looks at the file again and again; whoever hears of it decides what follows. */
function watch(tell: (version: string | null) => void): () => void {
  const timer = setInterval(() => {
    documentOf<{ readonly version: string | null }>('project/version').then(
      ({ version }) => tell(version),
      // The connection says it; nothing is known of the file.
      () => {},
    );
  }, LOOK_EVERY_MS);
  return () => clearInterval(timer);
}

/** The project in a folder behind the server. */
export function folderHome(name: string): ProjectHome {
  return {
    kind: 'folder',
    name,
    async load() {
      const { path, text, version, beside } = await documentOf<ServerProject>('project');
      return text === null ? null : { path, text, version, beside };
    },
    save,
    keep,
    watch,
  };
}
