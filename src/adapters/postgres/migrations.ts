/** Changes of the tables in order; each runs once, and one that has run is never edited. */
export const migrations: readonly string[] = [
  `CREATE TABLE station (id integer GENERATED ALWAYS AS IDENTITY PRIMARY KEY, name text NOT NULL UNIQUE);
   CREATE TABLE sample (
     station_id integer NOT NULL,
     at_ms bigint NOT NULL,
     within_ms double precision NOT NULL,
     heading_deg double precision,
     half_width_deg double precision,
     mean_heading_deg double precision,
     agreement double precision,
     speed_m_per_s double precision,
     gust_m_per_s double precision,
     flags integer NOT NULL,
     word text,
     pulses bigint,
     edges bigint,
     stream bigint NOT NULL,
     line bigint NOT NULL,
     PRIMARY KEY (station_id, at_ms)
   ) PARTITION BY RANGE (at_ms);
   CREATE TABLE ledger (
     id bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
     log text NOT NULL,
     stream bigint NOT NULL,
     reason text NOT NULL,
     from_line bigint NOT NULL,
     to_line bigint NOT NULL,
     count bigint NOT NULL,
     got text NOT NULL
   );
   CREATE TABLE progress (log text PRIMARY KEY, seq bigint NOT NULL, state text NOT NULL);`,
  'ALTER TABLE sample ADD COLUMN counts text;',
  `CREATE TABLE feed (
     id integer GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
     topic text NOT NULL UNIQUE,
     station text NOT NULL
   );
   CREATE TABLE waiting (
     feed_id integer NOT NULL,
     arrived_ms bigint NOT NULL,
     id bigint GENERATED ALWAYS AS IDENTITY,
     worker text NOT NULL,
     bytes bytea NOT NULL,
     PRIMARY KEY (feed_id, arrived_ms, id)
   );
   CREATE TABLE message (
     feed_id integer NOT NULL,
     seq bigint NOT NULL,
     arrived_ms bigint NOT NULL,
     worker text NOT NULL,
     bytes bytea NOT NULL,
     PRIMARY KEY (feed_id, seq, arrived_ms)
   ) PARTITION BY RANGE (arrived_ms);`,
];

/** A number of our own for locks of the whole store, which no other program should use. */
export const STORE_LOCK = 7_830_126;
