import { speedUnits, type SpeedColumnUnit } from './speedColumn.ts';

/** What a column of a log holds. */
export type ColumnRole =
  | 'instant'
  | 'date'
  | 'time-of-day'
  | 'unix-s'
  | 'unix-ms'
  | 'counter-ms'
  | 'counter-us'
  | 'counter-s'
  | 'line-number'
  | 'heading'
  | 'speed'
  | 'gust'
  | 'pulses'
  | 'word'
  | 'other';

/** A column by its name. */
export interface NamedColumn {
  readonly role: ColumnRole;
  /** Unit of speed in the name, or `null`. */
  readonly speedUnit: SpeedColumnUnit | null;
}

const NAMES: readonly (readonly [ColumnRole, RegExp])[] = [
  ['counter-us', /^(us|µs|micros|microseconds)$/],
  ['counter-ms', /^(ms|millis|milliseconds|uptime|uptimems|sincestartms)$/],
  ['counter-s', /^(s|sec|secs|seconds|uptimes)$/],
  ['unix-s', /^(unix|epoch|unixtime|epochs|unixs)$/],
  ['unix-ms', /^(unixms|epochms|atms)$/],
  ['date', /^(date|datum|day|fecha|data|jour)$/],
  ['time-of-day', /^(clock|timeofday|uhrzeit|hora|heure|ora)$/],
  [
    'instant',
    /^(time|timestamp|datetime|zeit|zeitstempel|utc|timeutc|utctime|localtime|when|at|created|tiempo|temps)$/,
  ],
  ['line-number', /^(n|no|nr|line|linenumber|counter|count|index|i|seq|id)$/],
  ['gust', /(gust|boe|böe|rafale|rafaga|ráfaga|raffica|peak|max)/],
  [
    'heading',
    /^(wind)?(dir|direction|heading|bearing|deg|degrees|richtung|windrichtung|wd|vane|direccion|dirección)/,
  ],
  [
    'speed',
    /^(avg|mean)?(wind)?(speed|spd|geschwindigkeit|windgeschwindigkeit|ws|velocity|vel|velocidad|vitesse|ff|mps|kmh|mph|knots|kt)/,
  ],
  ['pulses', /^(pulses|pulse|pulscount|impulse|cups)$/],
  ['word', /^(word|bits|pattern|code)$/],
];

/**
 * What a column's name tells.
 *
 * @param name - As written, with a unit in brackets or behind an underscore or not.
 */
export function namedColumn(name: string): NamedColumn {
  const lower = name.toLowerCase();
  const plain = lower.replace(/[\s"'()[\]._:/-]/g, '');
  const role = NAMES.find(([, pattern]) => pattern.test(plain))?.[0] ?? 'other';
  const isSpeed = role === 'speed' || role === 'gust';
  const unit = speedUnits.find(({ pattern }) => pattern.test(lower))?.unit ?? null;
  return { role, speedUnit: isSpeed ? unit : null };
}
