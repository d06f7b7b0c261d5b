import type { DuckDBConnection } from '@duckdb/node-api';

/** Numbers that stand for texts which many samples share. */
export class Dictionary {
  readonly #select: string;
  readonly #insert: string;
  #ids = new Map<string, number>();
  #texts: string[] = [];
  /** Texts up to here are in the table. [-] */
  #stored = 0;

  /** @param table - Our own name of a table with an id and a text. */
  constructor(table: 'station' | 'word', column: 'name' | 'digits') {
    this.#select = `SELECT id, ${column} FROM ${table} ORDER BY id`;
    this.#insert = `INSERT INTO ${table} VALUES ($1, $2)`;
  }

  /** Reads the table anew. */
  async load(connection: DuckDBConnection): Promise<void> {
    const rows = (await connection.runAndReadAll(this.#select)).getRows();
    this.#texts = rows.map(([, text]) => text as string);
    this.#ids = new Map(this.#texts.map((text, id) => [text, id]));
    this.#stored = this.#texts.length;
  }

  /** Every text, at the place that its number tells. */
  get texts(): readonly string[] {
    return this.#texts;
  }

  /** Number of a text, given out when it is new. */
  id(text: string): number {
    const known = this.#ids.get(text);
    if (known !== undefined) return known;
    const id = this.#texts.length;
    this.#texts.push(text);
    this.#ids.set(text, id);
    return id;
  }

  /** Number of a text, or `null` when it is not there. */
  known(text: string): number | null {
    return this.#ids.get(text) ?? null;
  }

  text(id: number): string {
    return this.#texts[id]!;
  }

  /** Writes the texts that are new. */
  async store(connection: DuckDBConnection): Promise<void> {
    for (; this.#stored < this.#texts.length; this.#stored++) {
      await connection.run(this.#insert, [this.#stored, this.#texts[this.#stored]!]);
    }
  }
}
