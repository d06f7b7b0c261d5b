import { describe, expect, it } from 'vitest';
import { fileFields } from './fileFields.ts';

describe('the fields of a file that is still being written', () => {
  it('are what the file says, in range or not', () => {
    expect(fileFields('vanewright: 1\ndisc: { diameterMm: -4, bore: { shape: d } }\n')).toEqual({
      vanewright: 1,
      disc: { diameterMm: -4, bore: { shape: 'd' } },
    });
  });

  it('are those that can be made out where the rest is broken', () => {
    expect(fileFields('name: jetty\nneed: {positions: 32\ndisc: [')).toMatchObject({ name: 'jetty' });
  });

  it.each(['', '- a\n- b', '42', '\u0000', 'a: *nothing', 'a: &x [*x, *x]'])('are none in %j', (text) => {
    expect(Object.keys(fileFields(text)).filter((name) => name !== 'a')).toEqual([]);
  });
});
