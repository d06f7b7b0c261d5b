import { describe, expect, it } from 'vitest';
import { exampleInstrument, plannedHead } from '../../../../test/support/plannedHead.ts';
import { headingOfPosition } from '../../instrument/index.ts';
import { explainPage } from './explainPage.ts';
import { pageData } from './pageData.ts';
import { readingUnder } from './script/reading.ts';

const explained = (name: string) => {
  const instrument = exampleInstrument(name);
  return { instrument, head: plannedHead(instrument) };
};

describe.each(['jetty', 'dome', 'sluice', 'tricolour'])('the page about the disc of %s', (name) => {
  const about = explained(name);
  const data = pageData(about);

  it('reads every position as the code table does, with the heading that the instrument gives it', () => {
    const { words, positions } = about.head.disc.code;
    for (const [position, word] of words.entries()) {
      const read = readingUnder(data, ((position + 0.5) * 360) / positions);
      expect([read.word, read.position]).toEqual([word, position]);
      expect(read.headingDeg).toBeCloseTo(headingOfPosition(about.instrument, position), 9);
    }
  });

  it('gives no position another word than the code table, read back as rows of a table', () => {
    const rows = [...explainPage(about).matchAll(/<tr><td>(\d+)<\/td><td>([012]+)<\/td>/g)];
    expect(rows.length).toBeGreaterThan(4);
    for (const [, position, word] of rows) expect(about.head.disc.code.words[Number(position)]).toBe(word);
  });

  it('asks nothing of any network', () => {
    const page = explainPage(about);
    expect(page).toContain("default-src 'none'");
    expect(page.match(/(?:src|href)="(?!#)[^"]*"/g)).toBeNull();
    expect(page).not.toMatch(/url\(|@import/);
  });
});

it('runs headings the other way round where the finished build does', () => {
  const about = explained('jetty');
  const { sense } = pageData(about);
  const asBuilt = { recordedAt: '', tableHash: '', channels: [], sense: 'reversed', positions: [] } as const;
  expect(pageData({ ...about, instrument: { ...about.instrument, asBuilt } }).sense).toBe(-sense);
});

it('keeps a hostile name from becoming part of the page', () => {
  const about = explained('jetty');
  const name = '</script><script>alert(1)</script><img src=x onerror=alert(2)>';
  const page = explainPage({ ...about, instrument: { ...about.instrument, name } });
  expect(page).not.toContain('<img');
  expect(page.match(/<script/g)).toHaveLength(2);
});

it('shows the colours of a disc of colours, and light and dark of any other', () => {
  expect(pageData(explained('tricolour'))).toMatchObject({ litLevel: -1 });
  expect(pageData(explained('tricolour')).levelColours).toHaveLength(3);
  expect(pageData(explained('jetty'))).toMatchObject({ litLevel: 1, levelColours: [] });
});
