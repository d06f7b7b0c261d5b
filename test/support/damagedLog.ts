// Writes logs of a pretended vane and spoils some lines on purpose; knows what it did, and shares no code with the reader.
import { seededRandom, type Random } from '../../src/core/units/index.ts';
import { checkDigits } from './vaneLine.ts';

/** What was done to a log, how often, under the names of the repair ledger. */
export type Damage = Record<string, number>;

/** A log as bytes that came at certain times, what is wrong with it, and the lines that are good. */
export interface DamagedLog {
  readonly pieces: readonly { readonly bytes: Uint8Array; readonly arrivedMs: number }[];
  readonly damage: Damage;
  /** Every good line: where the wind came from [deg] and when it was read [ms UTC]. */
  readonly good: readonly { readonly headingDeg: number; readonly atMs: number }[];
  readonly lines: number;
  readonly damaged: number;
}

function vaneLine(
  number: number,
  counterMs: number,
  position: number,
  pulses: number,
  random: Random,
): string {
  const counts = Array.from({ length: 5 }, () => 80 + Math.floor(900 * random.uniform())).join(',');
  const word = position.toString(2).padStart(5, '0');
  const heading = position * 1125 + 562;
  const body = `vw1 ${number} ${counterMs} ${counts} ${word} ${heading} 563 - - - ${pulses} ${2 * pulses} -`;
  return `${body} ${checkDigits(body)}`;
}

const ways = [
  'rubbish',
  'cut-end',
  'cut-begin',
  'changed',
  'glued',
  'twice',
  'lost',
  'empty',
  'foreign',
  'restart',
  'noise-in-front',
] as const;
/** Lines after a damaged one that stay whole, so that each damage stands by itself. [-] */
const REST = 4;
const START_MS = Date.parse('2026-05-01T12:00:00Z');
/** The counter begins this long before its end, so that it wraps. [ms] */
const BEFORE_WRAP_MS = 400_000;

const add = (damage: Damage, reason: string, count = 1): void => {
  damage[reason] = (damage[reason] ?? 0) + count;
};

/**
 * Lines of a controller through a bad cable, with the times at which they came.
 *
 * @param share - Share of lines that are damaged. [-]
 */
export function damagedVaneLog(seed: number, lines: number, share: number): DamagedLog {
  const random = seededRandom(seed);
  const pieces: DamagedLog['pieces'][number][] = [];
  const damage: Damage = {};
  const good: DamagedLog['good'][number][] = [];
  let [number, zeroMs, rest, damaged, arrivedMs, pulses] = [
    0,
    START_MS - (2 ** 32 - BEFORE_WRAP_MS),
    20,
    0,
    0,
    0,
  ];
  let wraps = 0;
  let [glued, way]: [string, (typeof ways)[number] | null] = ['', null];
  for (let i = 0; i < lines; i++) {
    const atMs = START_MS + 1000 * i + Math.floor(3 * random.uniform());
    way =
      rest <= 0 && random.uniform() < share * (1 + REST * share * 1.2)
        ? ways[Math.floor(ways.length * random.uniform())]!
        : null;
    rest = way ? REST : rest - 1;
    damaged += Number(way !== null);
    if (way === 'restart') {
      // The lines that were sent since the last good one are all here, so nothing is missing.
      zeroMs = atMs - 250;
      [number, pulses, wraps] = [0, 0, 0];
      add(damage, 'restart');
    }
    const round = Math.floor((atMs - zeroMs) / 2 ** 32);
    if (round > wraps) add(damage, 'counter-wrapped');
    wraps = round;
    pulses += Math.floor(8 * random.uniform());
    const position = Math.floor(32 * random.uniform());
    const line = vaneLine(number++, (atMs - zeroMs) % 2 ** 32, position, pulses, random);
    const read = { headingDeg: position * 11.25 + 5.62, atMs };
    // Mostly some milliseconds on the way, now and then a long wait in a full buffer.
    arrivedMs = Math.max(
      arrivedMs,
      atMs + Math.ceil(random.uniform() < 0.01 ? 700 * random.uniform() : 12 * random.uniform()),
    );
    const send = (text: string): void =>
      void pieces.push({ bytes: Uint8Array.from(Buffer.from(text, 'latin1')), arrivedMs });
    const end = random.uniform() < 0.5 ? '\n' : '\r\n';
    if (glued !== '') {
      send(`${glued}${line}${end}`);
      good.push(read);
      glued = '';
      continue;
    }
    switch (way) {
      case 'rubbish':
        send(
          `\u0001\u00fe\u0090${String.fromCharCode(128 + Math.floor(100 * random.uniform()))}x${end}${line}${end}`,
        );
        add(damage, 'rubbish');
        add(damage, 'not-utf8');
        break;
      case 'noise-in-front':
        send(`\u00f0\u0003~${line}${end}`);
        add(damage, 'rubbish');
        add(damage, 'not-utf8');
        break;
      case 'cut-end':
        send(`${line.slice(0, 6 + Math.floor((line.lastIndexOf(' ') - 6) * random.uniform()))}${end}`);
        add(damage, 'cut-line');
        continue;
      case 'cut-begin':
        send(`${line.slice(5 + Math.floor((line.lastIndexOf(' ') - 6) * random.uniform()))}${end}`);
        add(damage, 'cut-line');
        continue;
      case 'changed': {
        const at = 4 + Math.floor((line.length - 4) * random.uniform());
        const other = line[at] === '7' ? '3' : line[at] === ' ' ? '-' : '7';
        send(`${line.slice(0, at)}${other}${line.slice(at + 1)}${end}`);
        // A space that is gone makes one field of two.
        add(damage, line[at] === ' ' ? 'cut-line' : 'check-failed');
        continue;
      }
      case 'glued':
        glued = line;
        add(damage, 'split-line');
        good.push(read);
        continue;
      case 'twice':
        send(`${line}${end}${line}${end}`);
        add(damage, 'duplicate');
        break;
      case 'lost':
        add(damage, 'gap');
        continue;
      case 'empty': {
        const bytes = 1 + Math.floor(200 * random.uniform());
        send(`${'\0'.repeat(bytes)}${line}${end}`);
        add(damage, 'empty-bytes', bytes);
        break;
      }
      case 'foreign':
        send(`Please mind the boathouse door${end}${line}${end}`);
        add(damage, 'not-a-line');
        break;
      default:
        send(`${line}${end}`);
    }
    good.push(read);
  }
  if (glued !== '') pieces.push({ bytes: Uint8Array.from(Buffer.from(`${glued}\n`)), arrivedMs });
  if (glued !== '') damage['split-line']!--;
  return { pieces, damage, good, lines, damaged };
}

const rowWays = [
  'missing',
  'extra',
  'cut',
  'rubbish',
  'spreadsheet',
  'power-of-ten',
  'twice',
  'differs',
  'glued',
  'lost',
  'sentinel',
  'full-turn',
  'calm',
  'absurd',
  'negative',
  'heading',
  'ready',
  'empty',
  'out-of-circle',
] as const;

/** A log of columns as an old logger with a card left it, local time and decimal comma, spoiled in every way. */
export function damagedTable(seed: number, rows: number, share: number): DamagedLog {
  const random = seededRandom(seed);
  const damage: Damage = { 'heading-line': 1, 'decimal-comma': 1, 'local-time': 1 };
  const good: DamagedLog['good'][number][] = [];
  const heading = 'Zeit;Windrichtung;Geschwindigkeit (km/h)';
  let text = `${heading}\n`;
  let [rest, damaged] = [500, 0];
  // Berlin summer time: two hours ahead of UTC all through.
  const startMs = Date.parse('2026-05-01T00:00:00Z');
  const rowAt = (at: number, speed: string, heading: string): string => {
    const local = new Date(at + 7_200_000).toISOString();
    return `${local.slice(8, 10)}.${local.slice(5, 7)}.${local.slice(0, 4)} ${local.slice(11, 19)};${heading};${speed}`;
  };
  let glued = false;
  for (let i = 0; i < rows; i++) {
    const atMs = startMs + 60_000 * i;
    const way: (typeof rowWays)[number] | null =
      rest <= 0 && random.uniform() < share * (1 + REST * share * 1.2)
        ? rowWays[Math.floor(rowWays.length * random.uniform())]!
        : null;
    rest = way ? REST : rest - 1;
    damaged += Number(way !== null);
    const degrees = 1 + Math.floor(359 * random.uniform());
    const speed = (1 + Math.floor(500 * random.uniform())) / 10;
    const shownSpeed = speed.toFixed(1).replace('.', ',');
    const row = rowAt(atMs, shownSpeed, String(degrees));
    const keep = (headingDeg = degrees): void => void good.push({ headingDeg, atMs });
    if (glued) {
      text += `${row}\n`;
      keep();
      glued = false;
      continue;
    }
    switch (way) {
      case 'missing':
        text += `${rowAt(atMs, random.uniform() < 0.5 ? '' : shownSpeed, '')}\n`;
        add(damage, 'missing-value');
        continue;
      case 'extra':
        text += `${row.replace(';', ';;')}\n`;
        add(damage, 'extra-value');
        continue;
      case 'cut':
        text += `${row.slice(0, row.indexOf(';') + 2)}\n`;
        add(damage, 'cut-line');
        continue;
      case 'rubbish':
        text += `\u0002\u0007q;${row.slice(4)}\n${row}\n`;
        add(damage, 'rubbish');
        break;
      case 'spreadsheet':
        text += `${rowAt(atMs, '25. Mrz', String(degrees))}\n`;
        add(damage, 'spreadsheet');
        continue;
      case 'power-of-ten':
        text += `${rowAt(atMs, '1E+05', String(degrees))}\n`;
        add(damage, 'spreadsheet');
        continue;
      case 'twice':
        text += `${row}\n${row}\n`;
        add(damage, 'duplicate');
        break;
      case 'differs':
        text += `${row}\n${rowAt(atMs, shownSpeed, String((degrees % 359) + 1))}\n`;
        add(damage, 'conflict');
        break;
      case 'glued':
        if (i + 1 >= rows) continue;
        text += row;
        glued = true;
        add(damage, 'split-line');
        break;
      case 'lost':
        if (i + 1 < rows) add(damage, 'gap');
        continue;
      case 'sentinel':
        text += `${rowAt(atMs, shownSpeed, random.uniform() < 0.5 ? '999' : '-1')}\n`;
        add(damage, 'sentinel');
        keep(-1);
        continue;
      case 'full-turn':
        text += `${rowAt(atMs, shownSpeed, '360')}\n`;
        add(damage, 'full-turn');
        keep(0);
        continue;
      case 'calm':
        text += `${rowAt(atMs, '0,0', random.uniform() < 0.5 ? '0' : '')}\n`;
        add(damage, 'calm');
        keep(-1);
        continue;
      case 'absurd':
        text += `${rowAt(atMs, '3450,7', String(degrees))}\n`;
        add(damage, 'absurd-speed');
        break;
      case 'negative':
        text += `${rowAt(atMs, '-17,3', String(degrees))}\n`;
        add(damage, 'negative-speed');
        continue;
      case 'heading':
        text += `${heading}\n${row}\n`;
        add(damage, 'heading-line');
        add(damage, 'restart');
        break;
      case 'ready':
        text += `Logger started\n${row}\n`;
        add(damage, 'ready-text');
        add(damage, 'restart');
        break;
      case 'empty':
        text += `${'\0'.repeat(64)}${row}\n`;
        add(damage, 'empty-bytes', 64);
        break;
      case 'out-of-circle':
        text += `${rowAt(atMs, shownSpeed, '801')}\n`;
        add(damage, 'bad-value');
        continue;
      default:
        text += `${row}\n`;
    }
    keep();
  }
  const bytes = Uint8Array.from(Buffer.from(text, 'latin1'));
  return { pieces: [{ bytes, arrivedMs: Number.NaN }], damage, good, lines: rows, damaged };
}
