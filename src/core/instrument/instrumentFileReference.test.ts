import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { instrumentFileReference, readInstrument } from './index.ts';

const committed = readFileSync(new URL('../../../docs/instrument-file.md', import.meta.url), 'utf8');

/** Fields of their own, and not a single value or a list. */
function isFields(value: unknown): boolean {
  return typeof value === 'object' && !Array.isArray(value);
}

describe('the reference page of the instrument file', () => {
  it('is the one in docs/, as it is now', () => {
    expect(committed).toBe(instrumentFileReference());
  });

  it('shows a smallest file that reads', () => {
    const smallest = /```yaml\n([^`]+)```/.exec(committed)![1]!;
    expect(readInstrument(smallest, 'f.yaml').instrument.need.positions).toBe(32);
  });

  it('has a heading for every group and a row for every field that the smallest file is filled up with', () => {
    const smallest = /```yaml\n([^`]+)```/.exec(committed)![1]!;
    const { instrument } = readInstrument(`${smallest}cups: {}\n`, 'f.yaml');
    for (const [section, fields] of Object.entries(instrument)) {
      if (typeof fields === 'string') continue;
      expect(committed).toContain(`\n## ${section}\n`);
      if (fields === null) continue;
      for (const [name, value] of Object.entries(fields as object)) {
        const heading = `\n### ${section}.${name}\n`;
        // A group that is left out is null, as a single field may be.
        const isGroup = value === null ? committed.includes(heading) : isFields(value);
        expect(committed).toContain(isGroup ? heading : `\n| \`${name}\` |`);
      }
    }
  });

  it('gives range, unit, default and meaning of a field in one row', () => {
    expect(committed).toContain(
      '| `turnRateDegPerS` | a number from 0.1 to 3600 deg/s | 45 deg/s | Fastest turn at which',
    );
  });

  it('leaves no word of a sentence empty', () => {
    expect(committed).not.toMatch(/undefined|Default: [.]/);
  });

  it('has tables of four columns only', () => {
    const rows = committed.split('\n').filter((row) => row.startsWith('|'));
    expect(rows.length).toBeGreaterThan(60);
    for (const row of rows) expect(row.replaceAll('\\|', '').split('|')).toHaveLength(6);
  });
});
