/** What a column of a recording holds. */
export type Role =
  'time-ms' | 'time-us' | 'time-s' | 'counts' | 'bit' | 'word' | 'number' | 'mark' | 'left-out';

/** Names that makers give to columns, by role. Compared in lower case without spaces, units and brackets. */
const NAMES: readonly (readonly [Role, RegExp])[] = [
  ['time-us', /^(us|micros|timeus|tus|microseconds|[µμ]s)$/],
  ['time-s', /^(s|sec|secs|seconds|times|ts)$/],
  ['time-ms', /^(ms|millis|t|time|timems|tms|milliseconds|zeit|zeitms|sincestartms|tiempo|temps|uptime)$/],
  ['mark', /^(mark|marks|markdeg|angle|angledeg|ref|refdeg|reference|protractor|truth|dial|dialdeg|winkel)$/],
  ['word', /^(word|bits|pattern|digits|raw|inputs|states)$/],
  ['number', /^(pos|position|sector|code|value|decoded|heading|headingdeg|dir|direction|dirdeg|deg)$/],
  [
    'counts',
    /^(a|adc|ch|chan|channel|c|raw|counts?|sensor|track|v|volt|volts|ldr|pt|spur|kanal|in|input)[_-]?\d{1,2}$/,
  ],
  ['bit', /^(b|bit|d|dig|digital)[_-]?\d{1,2}$/],
  ['left-out', /^(n|no|nr|line|linenumber|count|counter|index|i|pulses|edges|flags|cups|temp|battery|crc)$/],
];

/** Role that a column's name tells, or `null` when it tells none. */
export function roleOfName(name: string): Role | null {
  const plain = name.toLowerCase().replace(/[\s"'()[\].]/g, '');
  return NAMES.find(([, pattern]) => pattern.test(plain))?.[0] ?? null;
}

const NUMBER = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)([eE][+-]?\d+)?$/;

/** Number of a field: decimal point or comma, hexadecimal or binary with its sign in front; `null` when it is none. */
export function fieldNumber(text: string): number | null {
  if (/^0[xX][0-9a-fA-F]+$/.test(text) || /^0[bB][01]+$/.test(text)) return Number(text);
  if (!NUMBER.test(text)) return null;
  const value = Number(text.replace(',', '.'));
  return Number.isFinite(value) ? value : null;
}

/** Digits of a word: `10110`, `HLHH`, `0b101`; `null` when the field is none. */
export function wordDigits(text: string): string | null {
  const plain = text.replace(/^0[bB](?=[01]+$)/, '');
  if (/^[01]+$/.test(plain)) return plain;
  if (/^[HLhl]+$/.test(plain)) return plain.replace(/[Hh]/g, '1').replace(/[Ll]/g, '0');
  return null;
}

/** True when a field can stand in a data row: number, word or nothing. */
export function isDataField(text: string): boolean {
  return text === '' || fieldNumber(text) !== null || wordDigits(text) !== null;
}

const everyIs = (fields: readonly string[], test: (text: string) => boolean): boolean =>
  fields.length > 0 && fields.every(test);

/** Rises nearly always, as a clock or a counter does. */
function rises(fields: readonly string[]): boolean {
  if (fields.length < 3) return false;
  const values = fields.map(fieldNumber);
  let up = 0;
  for (let i = 1; i < values.length; i++) up += Number(values[i]! > values[i - 1]! || values[i] === null);
  return up >= 0.9 * (values.length - 1);
}

function countsUp(fields: readonly string[]): boolean {
  const values = fields.map(fieldNumber);
  const ones = values.filter((value, i) => i > 0 && value === values[i - 1]! + 1).length;
  return ones >= 0.8 * (values.length - 1);
}

/** Unit of a clock by its usual step: below half it is seconds, above 3000 microseconds, between milliseconds. */
export function clockRole(fields: readonly string[]): Role {
  const values = fields.map(fieldNumber).filter((value) => value !== null);
  const steps = values.slice(1).map((value, i) => value - values[i]!);
  const usual = steps.filter((step) => step > 0).sort((a, b) => a - b)[steps.length >> 1] ?? 20;
  if (usual < 0.5) return 'time-s';
  return usual > 3000 ? 'time-us' : 'time-ms';
}

/**
 * Roles of the columns, by their names where they have any, else by what is in them.
 *
 * @param names - Name of each column, or `null` where the file has no line of headings.
 * @param sample - The first good rows, fields as written. n ≥ 1
 */
export function rolesOf(names: readonly string[] | null, sample: readonly (readonly string[])[]): Role[] {
  const width = sample[0]!.length;
  const column = (c: number): string[] => sample.map((row) => row[c]!);
  const roles: (Role | null)[] = Array.from({ length: width }, (_, c) => {
    const named = names?.[c] === undefined ? null : roleOfName(names[c]!);
    return named === 'time-ms' && /^(t|time|zeit|temps|tiempo)$/i.test(names![c]!.trim())
      ? clockRole(column(c))
      : named;
  });
  if (!roles.some((role) => role?.startsWith('time'))) findClock(roles, column, width);
  const open = [...roles.keys()].filter(
    (c) => roles[c] === null || roles[c] === 'counts' || roles[c] === 'bit',
  );
  const areBits = open.length > 1 && open.every((c) => everyIs(column(c), (text) => /^[01HLhl]$/.test(text)));
  for (const c of open) roles[c] = areBits ? 'bit' : (roles[c] ?? contentRole(column(c), open.length));
  for (const [c, role] of roles.entries()) {
    // A column called `code` or `raw` that holds words holds words.
    if (role === 'number' && looksLikeWords(column(c))) roles[c] = 'word';
    if (role === 'word' && !everyIs(column(c), (text) => wordDigits(text) !== null)) roles[c] = 'number';
  }
  return preferred(roles as Role[]);
}

function findClock(roles: (Role | null)[], column: (c: number) => string[], width: number): void {
  const couldBe = (c: number): boolean => c < width - 1 && roles[c] === null && rises(column(c));
  if (!couldBe(0)) return;
  // One by one, and then something else that rises: a line counter in front of the clock.
  const isCounter = couldBe(1) && !countsUp(column(1)) && countsUp(column(0));
  if (isCounter) roles[0] = 'left-out';
  const clock = isCounter ? 1 : 0;
  roles[clock] = clockRole(column(clock));
}

function looksLikeWords(fields: readonly string[]): boolean {
  return everyIs(fields, (text) => wordDigits(text) !== null) && fields.some((text) => text.length > 2);
}

function contentRole(fields: readonly string[], open: number): Role {
  if (looksLikeWords(fields)) return 'word';
  return open === 1 ? 'number' : 'counts';
}

/** Of several ways to say the same thing the rawest is taken: counts before bits before a word before a number. */
function preferred(roles: Role[]): Role[] {
  const best = (['counts', 'bit', 'word', 'number'] as const).find((role) => roles.includes(role));
  let taken = false;
  return roles.map((role) => {
    if (role === 'counts' || role === 'bit') return role === best ? role : 'left-out';
    if (role !== 'word' && role !== 'number') return role;
    if (role !== best || taken) return 'left-out';
    taken = true;
    return role;
  });
}
