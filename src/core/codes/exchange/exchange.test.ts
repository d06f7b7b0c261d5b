import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { problemsOf } from '../../../../test/support/problemsOf.ts';
import type { Problem } from '../../error/index.ts';
import { buildCode, codeCsv, codeJson, familyNames, readCodeCsv, readCodeJson } from '../index.ts';

const QUICK = { seed: 1, mostSteps: 60_000 };

const csv = (...lines: string[]): readonly Problem[] =>
  problemsOf(() => readCodeCsv(lines.join('\n'), 'own.csv'));
const json = (document: unknown): readonly Problem[] =>
  problemsOf(() => readCodeJson(JSON.stringify(document), 'own.json'));

describe('a table written and read again', () => {
  it('is the same disc for every family, as JSON', () => {
    for (const name of familyNames) {
      const table = buildCode(name, 24, {}, QUICK);
      const again = readCodeJson(codeJson(table), 'code.json');
      expect(again.words, name).toEqual(table.words);
      expect([again.tracks, again.channels, again.strobe, again.countingChannels, again.family]).toEqual([
        table.tracks,
        table.channels,
        table.strobe,
        table.countingChannels,
        table.family,
      ]);
      expect(codeJson(again)).toBe(codeJson(table));
    }
  });

  it('has the same words for every code that tells every position, as CSV', () => {
    for (const name of familyNames.filter(
      (family) => family !== 'counting-wheel' && family !== 'shift-register',
    )) {
      const table = buildCode(name, 24, {}, QUICK);
      const again = readCodeCsv(codeCsv(table), 'code.csv');
      expect(again.words, name).toEqual(table.words);
      expect(again.family).toBe('own-words');
    }
  });

  it('lists where each position begins and ends', () => {
    expect(codeCsv(buildCode('reflected-gray', 4))).toBe(
      'position,fromDeg,toDeg,word\n0,0,90,00\n1,90,180,01\n2,180,270,11\n3,270,360,10\n',
    );
  });
});

describe("a maker's own words", () => {
  it('are read one a line, with or without heading, quotes, blanks and carriage returns', () => {
    const words = ['00', '01', '11', '10'];
    for (const text of [
      '00\n01\n11\n10\n',
      'word\r\n"00"\r\n"01"\r\n"11"\r\n"10"\r\n',
      '\uFEFFposition;word\n0;00\n1;01\n\n2; 11\n3;10',
      'word\tposition\n00\t0\n01\t1\n11\t2\n10\t3',
    ]) {
      expect(readCodeCsv(text, 'own.csv').words).toEqual(words);
    }
    expect(
      readCodeJson('{"vanewrightCode": 1, "words": ["00", "01", "11", "10"]}', 'own.json').words,
    ).toEqual(words);
  });

  it('may use three levels on some channels', () => {
    const { tracks } = readCodeCsv('00\n01\n02\n12\n11\n10', 'own.csv');
    expect(tracks.map((track) => track.levelCount)).toEqual([2, 3]);
  });
});

describe('a file that is no code', () => {
  it('is told where zeros were dropped', () => {
    expect(csv('word', '0', '1', '11', '10')).toMatchObject([
      { code: 'codes/word-length', where: 'own.csv:2', fix: expect.stringContaining('write 00') as string },
      { code: 'codes/word-length', where: 'own.csv:3', fix: expect.stringContaining('write 01') as string },
    ]);
  });

  it('is told both lines of a word that repeats', () => {
    expect(csv('00', '01', '11', '01')).toMatchObject([
      { code: 'codes/word-repeats', where: 'own.csv:4', got: 'word 01, also at own.csv:2' },
    ]);
  });

  it('is told every fault at once', () => {
    expect(
      csv('position,word', '0,00', '2,0x', '2,11', '3,').map(({ code, where }) => [code, where]),
    ).toEqual([
      ['codes/position-out-of-order', 'own.csv:3'],
      ['codes/word-not-levels', 'own.csv:3'],
      ['codes/word-not-levels', 'own.csv:5'],
    ]);
  });

  it('is told which channel never changes', () => {
    expect(csv('100', '101', '111', '110')).toMatchObject([
      { code: 'codes/channel-never-changes', got: '1 on channel 0, digit 1 of every word' },
    ]);
  });

  it('is told about its heading', () => {
    expect(csv('position,angle,word', '0,0,00')).toMatchObject([
      { code: 'codes/column-unknown', where: 'own.csv:1' },
    ]);
    expect(csv('position', '0')).toMatchObject([{ code: 'codes/column-missing' }]);
  });

  it('is told how many words a disc can have', () => {
    expect(csv('')).toMatchObject([{ code: 'codes/count-out-of-range', got: '0 words' }]);
    expect(csv(...Array<string>(4097).fill('0'))).toMatchObject([{ code: 'codes/count-out-of-range' }]);
    expect(csv('0'.repeat(4_000_001))).toMatchObject([{ code: 'codes/file-too-large' }]);
  });

  it('lists twenty faults and counts the rest', () => {
    const problems = csv(...Array<string>(100).fill('0-1'));
    expect(problems).toHaveLength(20);
    expect(problems.at(-1)!.what).toContain('(And 80 more problems like these.)');
  });

  it('is told the line of broken JSON', () => {
    const [problem] = problemsOf(() =>
      readCodeJson('{\n "vanewrightCode": 1,\n "words": [00]\n}', 'own.json'),
    );
    expect(problem).toMatchObject({ code: 'codes/not-json', where: 'own.json:3' });
  });

  it('is told which field of a JSON document is wrong', () => {
    const good = JSON.parse(codeJson(buildCode('reflected-gray', 8))) as Record<string, unknown>;
    expect(json(good)).toEqual([]);
    const track = { levelCount: 2, startsDeg: [10, 5], levels: [0, 1] };
    for (const [change, where] of [
      [{ vanewrightCode: 2 }, 'own.json › vanewrightCode'],
      [{ extra: 1 }, 'own.json › extra'],
      [{ positions: 5000 }, 'own.json › positions'],
      [{ tracks: [] }, 'own.json › tracks'],
      [{ tracks: [track, track, track] }, 'own.json › tracks[0].startsDeg'],
      [
        { tracks: [{ ...track, levelCount: 4 }], channels: [{ track: 0, angleDeg: 0 }] },
        'own.json › tracks[0].levelCount',
      ],
      [{ channels: [{ track: 3, angleDeg: 0 }] }, 'own.json › channels[0]'],
      [{ channels: [{ track: 0, angleDeg: 1e9 }] }, 'own.json › channels[0]'],
      [{ strobe: { channel: 9, level: 1 } }, 'own.json › strobe'],
      [{ countingChannels: 'all' }, 'own.json › countingChannels'],
      [{ words: 'none' }, 'own.json › words'],
    ] as const) {
      expect(json({ ...good, ...change })[0], where).toMatchObject({ code: 'codes/bad-code-field', where });
    }
    expect(json({ ...good, words: ['000'] })[0]).toMatchObject({ code: 'codes/words-do-not-match' });
    expect(json([])).toMatchObject([{ code: 'codes/bad-code-field' }]);
  });

  it('never crashes, whatever it holds', () => {
    const scrap = fc.stringMatching(/^[012,;\t\n"a\r]{0,60}$/);
    fc.assert(
      fc.property(fc.oneof(fc.string(), scrap), (text) => {
        problemsOf(() => readCodeCsv(text, 'scrap'));
        problemsOf(() => readCodeJson(text, 'scrap'));
      }),
      { seed: 79, numRuns: 500 },
    );
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), fc.jsonValue(), (tracks, channels, words) => {
        json({ vanewrightCode: 1, positions: 4, tracks, channels, words });
        json({ vanewrightCode: 1, positions: 4, tracks: [tracks], channels: [channels], strobe: words });
      }),
      { seed: 80, numRuns: 300 },
    );
  });
});
