import { describe, expect, it } from 'vitest';
import {
  archiveColumns,
  archiveDescriptor,
  csvField,
  csvHeading,
  csvText,
  ledgerCsv,
} from './archiveColumns.ts';
import { sampleWith } from './sample.ts';

describe('the archive as text', () => {
  it('has a field for each column, and nothing for nothing', () => {
    const sample = sampleWith({
      station: 'jetty',
      atMs: 1_795_608_000_250,
      withinMs: 500,
      headingDeg: 0,
      stream: 1,
      line: 2,
    });
    const fields = csvText([sample]).trimEnd().split(',');
    const names = csvHeading().trimEnd().split(',');
    const row = Object.fromEntries(names.map((name, i) => [name, fields[i]]));
    expect(row).toMatchObject({
      time: '2026-11-25T12:00:00.250Z',
      time_within_s: '0.5',
      wind_from_direction_deg: '0',
      wind_speed_m_s: '',
    });
    expect(fields).toHaveLength(archiveColumns.length);
  });

  it.each([
    ['=HYPERLINK("http://x")', `"'=HYPERLINK(""http://x"")"`],
    ['+1', "'+1"],
    ['-2+3', "'-2+3"],
    ['@sum', "'@sum"],
    ['a,b', '"a,b"'],
    ['a\nb', '"a\nb"'],
    ['plain', 'plain'],
  ])('makes no formula of %j', (text, field) => {
    expect(csvField(text)).toBe(field);
    const row = {
      log: 'l',
      stream: 1,
      reason: 'rubbish',
      fromLine: 1,
      toLine: 1,
      count: 1,
      got: text,
    } as const;
    expect(ledgerCsv([row], true).split('\r\n')[1]).toBe(`l,1,rubbish,1,1,1,${field}`);
  });

  it('is described with units and standard names', () => {
    const text = archiveDescriptor([{ path: 'a.csv', station: 'jetty', month: '2026-05', rows: 3 }], 'csv');
    const [resource] = (JSON.parse(text) as { resources: { schema: { fields: Record<string, string>[] } }[] })
      .resources;
    const speed = resource!.schema.fields.find(({ name }) => name === 'wind_speed_m_s');
    expect(speed).toMatchObject({ unit: 'm s-1', standard_name: 'wind_speed', type: 'number' });
  });
});
