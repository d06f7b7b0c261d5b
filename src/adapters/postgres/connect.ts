import pg from 'pg';
import { VanewrightError } from '../../core/error/index.ts';
import { migrations, STORE_LOCK } from './migrations.ts';

/** Where a server is, without its password. */
export function shownUrl(url: string): string {
  try {
    const shown = new URL(url);
    if (shown.password) shown.password = '***';
    return shown.toString();
  } catch {
    return 'postgres://…';
  }
}

/** What a maker is told when the server cannot be used. */
export function serverProblem(url: string, error: unknown): VanewrightError {
  const cause =
    error instanceof Error ? error.message || String((error as { code?: unknown }).code) : String(error);
  return new VanewrightError({
    code: 'store/not-reachable',
    what: 'The PostgreSQL server cannot be used.',
    where: shownUrl(url),
    got: cause.slice(0, 200),
    allowed: 'a running server, and a user who may make tables in the database',
    fix: 'Check host, port, user and password, such as with: psql URL. Lines go on into the raw log meanwhile.',
  });
}

/** Does work in a transaction; a connection on which it failed is not used again. */
export async function transaction<T>(pool: pg.Pool, work: (client: pg.PoolClient) => Promise<T>): Promise<T> {
  const client = await pool.connect();
  // A connection that breaks in between says so twice: here, where it would end the process, and to the query.
  const ignore = (): void => {};
  client.on('error', ignore);
  try {
    await client.query('BEGIN');
    const result = await work(client);
    await client.query('COMMIT');
    client.off('error', ignore);
    client.release();
    return result;
  } catch (error) {
    await client.query('ROLLBACK').catch(() => {});
    client.release(true);
    throw error;
  }
}

function migrate(pool: pg.Pool, url: string): Promise<void> {
  return transaction(pool, async (client) => {
    // Two workers that start at once must not both make the tables.
    await client.query('SELECT pg_advisory_xact_lock($1)', [STORE_LOCK]);
    await client.query(
      'CREATE TABLE IF NOT EXISTS migration (version integer PRIMARY KEY, done_at timestamptz DEFAULT now())',
    );
    const found = await client.query<{ last: number | null }>('SELECT max(version) AS last FROM migration');
    const last = found.rows[0]!.last ?? 0;
    if (last > migrations.length) {
      throw new VanewrightError({
        code: 'store/newer',
        what: 'The store was made by a later version of vanewright.',
        where: shownUrl(url),
        got: `layout ${last}`,
        allowed: `layout ${migrations.length} or earlier`,
        fix: 'Use that version for every worker of this store.',
      });
    }
    for (const [i, sql] of migrations.entries()) {
      if (i < last) continue;
      await client.query(sql);
      await client.query('INSERT INTO migration (version) VALUES ($1)', [i + 1]);
    }
  });
}

/**
 * Connections to a server whose tables are those of this version.
 *
 * @throws `store/not-reachable`, `store/newer`
 */
export async function connect(url: string): Promise<pg.Pool> {
  const pool = new pg.Pool({ connectionString: url, max: 4, connectionTimeoutMillis: 5000 });
  // A connection that breaks while it rests is replaced; the next query says if that fails.
  pool.on('error', () => {});
  try {
    await migrate(pool, url);
    return pool;
  } catch (error) {
    await pool.end();
    throw error instanceof VanewrightError ? error : serverProblem(url, error);
  }
}
