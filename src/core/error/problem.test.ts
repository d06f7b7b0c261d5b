import { describe, expect, it } from 'vitest';
import { BrokenPromise, throwIfAny, VanewrightError, type Problem } from './index.ts';

const problem: Problem = {
  code: 'disc/track-too-thin',
  what: 'The innermost track is narrower than the printer can draw.',
  where: 'jetty/instrument.yaml:14:11 › disc.tracks[4]',
  got: '0.21 mm',
  allowed: '0.4 mm or more',
  fix: 'Use 4 tracks.',
};

describe('VanewrightError', () => {
  it('prints the five answers in one fixed order', () => {
    expect(() => {
      throw new VanewrightError(problem);
    }).toThrowErrorMatchingInlineSnapshot(`
      [VanewrightError: disc/track-too-thin: The innermost track is narrower than the printer can draw.
        where:   jetty/instrument.yaml:14:11 › disc.tracks[4]
        got:     0.21 mm
        allowed: 0.4 mm or more
        fix:     Use 4 tracks.]
    `);
  });

  it('carries several problems at once', () => {
    const other = { ...problem, code: 'disc/other' };
    expect(new VanewrightError([problem, other]).problems.map(({ code }) => code)).toEqual([
      problem.code,
      other.code,
    ]);
  });
});

it('throws nothing when there is no problem', () => {
  expect(() => throwIfAny([])).not.toThrow();
  expect(() => throwIfAny([problem])).toThrow('disc/track-too-thin');
});

it('asks for the instrument file when the fault is ours', () => {
  expect(new BrokenPromise('Words differ.').message).toContain('report it with your instrument file');
});
