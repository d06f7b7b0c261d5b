import { describe, expect, it } from 'vitest';
import { byteLength, madeGroups, shownType } from './madeGroups.ts';

const file = (path: string) => ({ path, content: 'é' });

describe('made files', () => {
  it('stand by folder in the order of the job', () => {
    const groups = madeGroups(['coupon/a.stl', 'disc.svg', 'coupon/b.stl', 'program/x/y.ino'].map(file));
    expect(groups.map(({ folder, files }) => [folder, files.map(({ path }) => path)])).toEqual([
      ['coupon', ['coupon/a.stl', 'coupon/b.stl']],
      ['', ['disc.svg']],
      ['program', ['program/x/y.ino']],
    ]);
  });

  it('tell their length in bytes and whether a browser shows them', () => {
    expect(byteLength(file('a'))).toBe(2);
    expect(byteLength({ path: 'a', content: new Uint8Array(5) })).toBe(5);
    expect(shownType('build-sheet.html')).toBe('text/html');
    expect(shownType('disc.stl')).toBeNull();
    expect(shownType('LICENCE')).toBeNull();
  });
});
