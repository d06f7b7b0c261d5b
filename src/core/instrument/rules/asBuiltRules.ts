import type { Finding, PartialDraft } from './finding.ts';

type AsBuiltDraft = NonNullable<PartialDraft['asBuilt']>;

const fitAgain = 'Run `vanewright fit` on a recorded turn again; it writes the whole section.';

/** An instant of UTC, to the second or finer. */
const INSTANT = /^(\d{4}-\d\d-\d\d)T([01]\d|2[0-3]):[0-5]\d:[0-5]\d([.]\d{1,9})?Z$/;

/** The 30th of February is no day, although the pattern fits. */
function isInstant(text: string): boolean {
  const day = INSTANT.exec(text)?.[1];
  const time = day === undefined ? Number.NaN : Date.parse(`${day}T00:00:00Z`);
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(day!);
}

function instantRule({ recordedAt }: AsBuiltDraft): readonly Finding[] {
  if (isInstant(recordedAt)) return [];
  return [
    {
      code: 'instrument/bad-instant',
      fields: ['asBuilt.recordedAt'],
      what: 'The time of the recording is not an instant.',
      got: recordedAt,
      allowed: 'ISO 8601 in UTC, such as 2024-05-17T10:30:00Z',
      fix: 'Write it like 2024-05-17T10:30:00Z.',
    },
  ];
}

function channelRules(channel: AsBuiltDraft['channels'][number], at: string): readonly Finding[] {
  const { lowCounts, highCounts, litCounts, darkCounts, litIsHigh, edgeCurve, edgeWidthDeg } = channel;
  const findings: Finding[] = [];
  const add = (code: string, field: string, what: string, got: string, allowed: string): void => {
    findings.push({ code, fields: [`${at}.${field}`, at], what, got, allowed, fix: fitAgain });
  };
  if (lowCounts >= highCounts) {
    const got = `lowCounts ${lowCounts}, highCounts ${highCounts}`;
    add(
      'instrument/as-built-levels',
      'lowCounts',
      'The two thresholds are crossed.',
      got,
      'lowCounts below highCounts',
    );
  }
  if (litCounts > darkCounts !== litIsHigh || litCounts === darkCounts) {
    const got = `litIsHigh ${litIsHigh}, litCounts ${litCounts}, darkCounts ${darkCounts}`;
    const allowed = 'more counts lit than dark exactly when litIsHigh is true';
    add(
      'instrument/as-built-levels',
      'litIsHigh',
      'Levels and litIsHigh contradict each other.',
      got,
      allowed,
    );
  }
  if ((edgeCurve === null) !== (edgeWidthDeg === null)) {
    const got = edgeCurve === null ? 'edgeWidthDeg alone' : 'edgeCurve alone';
    add(
      'instrument/edge-curve',
      'edgeCurve',
      'A curve needs its width, and a width its curve.',
      got,
      'both or neither',
    );
  }
  const fall = edgeCurve?.findIndex((value, i) => i > 0 && value < edgeCurve[i - 1]!) ?? -1;
  if (fall > 0) {
    const got = `${edgeCurve![fall - 1]} and then ${edgeCurve![fall]}`;
    add('instrument/edge-curve', `edgeCurve[${fall}]`, 'The curve falls.', got, 'values that never fall');
  }
  return findings;
}

function wordRules({ channels, positions }: AsBuiltDraft): readonly Finding[] {
  const seen = new Map<string, number>();
  return positions.flatMap(({ word }, i): readonly Finding[] => {
    const fields: Finding['fields'] = [`asBuilt.positions[${i}].word`, 'asBuilt.channels'];
    const common = { code: 'instrument/as-built-words', fields, fix: fitAgain };
    if (word.length !== channels.length || /[^012]/.test(word)) {
      const what = 'A word does not have one level for each channel.';
      return [{ ...common, what, got: word, allowed: `${channels.length} digits 0, 1 or 2` }];
    }
    const first = seen.get(word);
    seen.set(word, first ?? i);
    if (first === undefined) return [];
    const what = 'A word stands at two places, so it could not be told where the vane is.';
    return [{ ...common, what, got: `${word} at positions ${first} and ${i}`, allowed: 'each word once' }];
  });
}

/** What `asBuilt` says, taken together; whether it belongs to the code of the disc is the program step's own check. */
export function asBuiltRules({ asBuilt }: PartialDraft): readonly Finding[] {
  if (!asBuilt) return [];
  return [
    ...instantRule(asBuilt),
    ...asBuilt.channels.flatMap((channel, c) => channelRules(channel, `asBuilt.channels[${c}]`)),
    ...wordRules(asBuilt),
  ];
}
