import { access, rename } from 'node:fs/promises';
import { DuckDBInstance, type DuckDBConnection } from '@duckdb/node-api';
import { VanewrightError } from '../../core/error/index.ts';
import { schema } from './sampleTable.ts';

/** An open database. */
export interface Database {
  readonly instance: DuckDBInstance;
  readonly connection: DuckDBConnection;
  /** Files that could not be read and were put aside; what they held is in the raw log. */
  readonly putAside: readonly string[];
}

/** Version of the tables. */
const LAYOUT = 1;
/** The engine works within this; a year at 1 Hz needs less. */
const MEMORY = '512MB';

const textOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

async function opened(path: string): Promise<Pick<Database, 'instance' | 'connection'>> {
  const instance = await DuckDBInstance.create(path);
  try {
    const connection = await instance.connect();
    await connection.run(`SET memory_limit='${MEMORY}'`);
    for (const statement of schema) await connection.run(statement);
    const found = await connection.runAndReadAll('SELECT version FROM layout');
    const version = found.getRows()[0]?.[0] as number | undefined;
    if (version === undefined) await connection.run('INSERT INTO layout VALUES ($1)', [LAYOUT]);
    if ((version ?? LAYOUT) > LAYOUT) throw newerProblem(path, version!);
    // A database that was never written out whole has no tables once its write-ahead log is gone.
    await connection.run('CHECKPOINT');
    return { instance, connection };
  } catch (error) {
    instance.closeSync();
    throw error;
  }
}

function newerProblem(path: string, version: number): VanewrightError {
  return new VanewrightError({
    code: 'store/newer',
    what: 'The store was made by a later version of vanewright.',
    where: path,
    got: `layout ${version}`,
    allowed: `layout ${LAYOUT}`,
    fix: 'Use that version, or remove the file: it is built again from the raw log.',
  });
}

function inUseProblem(path: string, error: unknown): VanewrightError {
  return new VanewrightError({
    code: 'store/in-use',
    what: 'Another process has this store open.',
    where: path,
    got: /PID (\d+)/.exec(textOf(error))?.[0] ?? 'a lock on the file',
    allowed: 'one process at a time for a store in a file',
    fix: 'Ask the running logger over its web address, stop it, or use a PostgreSQL store.',
  });
}

/** Puts a file that cannot be read out of the way, under a name that says so. */
async function putAside(path: string): Promise<string | null> {
  for (let n = 1; ; n++) {
    const goal = `${path}.damaged-${n}`;
    try {
      const isTaken = await access(goal).then(
        () => true,
        () => false,
      );
      if (isTaken) continue;
      await rename(path, goal);
      return goal;
    } catch {
      return null;
    }
  }
}

/**
 * Opens a database, whatever its last moments were like: the write-ahead log first, then the file are put aside until
 * it opens; what is missing then is read again from the raw log.
 *
 * @throws `store/in-use`, `store/newer`, `store/not-writable`
 */
export async function openDatabase(path: string): Promise<Database> {
  const aside: string[] = [];
  const removals = path === ':memory:' ? [] : [`${path}.wal`, path];
  for (;;) {
    try {
      return { ...(await opened(path)), putAside: aside };
    } catch (error) {
      if (error instanceof VanewrightError) throw error;
      if (/lock/i.test(textOf(error)) && /conflicting|could not set/i.test(textOf(error)))
        throw inUseProblem(path, error);
      const next = removals.shift();
      if (next === undefined) {
        throw new VanewrightError({
          code: 'store/not-writable',
          what: 'The store cannot be opened or made.',
          where: path,
          got: textOf(error).slice(0, 200),
          allowed: 'a path in a folder that you may write to',
          fix: 'Name a folder of your own with --store.',
        });
      }
      const moved = await putAside(next);
      if (moved) aside.push(moved);
    }
  }
}
