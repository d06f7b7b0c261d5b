import { describe, expect, it } from 'vitest';
import { ZoneClock } from './zoneClock.ts';

const local = (text: string): number => Date.parse(`${text}Z`);
const shown = (atMs: number): string => new Date(atMs).toISOString().slice(0, 16);

describe('local times', () => {
  // Summer time in Berlin 2026: from 29 March 01:00 UTC to 25 October 01:00 UTC (rule of the European Union).
  const berlin = new ZoneClock('Europe/Berlin');

  it('are an hour ahead in winter and two in summer', () => {
    expect(shown(berlin.instantOf(local('2026-01-15T12:00'), null).atMs)).toBe('2026-01-15T11:00');
    expect(shown(berlin.instantOf(local('2026-07-15T12:00'), null).atMs)).toBe('2026-07-15T10:00');
  });

  it('that come twice are told apart by the sample before', () => {
    const times = ['01:50', '02:10', '02:30', '02:50', '02:10', '02:30', '02:50', '03:10'];
    let before: number | null = null;
    const instants = times.map((time) => {
      const { atMs, how } = berlin.instantOf(local(`2026-10-25T${time}`), before);
      before = atMs;
      return `${shown(atMs).slice(11)} ${how}`;
    });
    expect(instants).toEqual([
      '23:50 once',
      '00:10 twice',
      '00:30 twice',
      '00:50 twice',
      '01:10 twice',
      '01:30 twice',
      '01:50 twice',
      '02:10 once',
    ]);
  });

  it('that did not exist are those of a clock not yet put forward', () => {
    const { atMs, how } = berlin.instantOf(local('2026-03-29T02:30'), null);
    expect([shown(atMs), how]).toEqual(['2026-03-29T01:30', 'missing']);
  });

  it('agree with the reading of each instant the whole year round, in every zone tried', () => {
    for (const zone of [
      'Europe/Berlin',
      'America/New_York',
      'Australia/Lord_Howe',
      'Asia/Kathmandu',
      'UTC',
    ]) {
      const clock = new ZoneClock(zone);
      const from = Date.parse('2026-01-01T00:00:00Z');
      let before: number | null = null;
      for (let at = from; at < from + 365 * 86_400_000; at += 1_800_000) {
        const instant: number = clock.instantOf(at + clock.offsetAt(at), before).atMs;
        if (instant !== at) throw new Error(`${zone} ${shown(at)} gave ${shown(instant)}`);
        before = instant;
      }
    }
  });

  it('may have a fixed offset', () => {
    expect(shown(new ZoneClock('+05:30').instantOf(local('2026-01-01T05:30'), null).atMs)).toBe(
      '2026-01-01T00:00',
    );
  });

  it('need a zone that exists', () => {
    expect(() => new ZoneClock("Mars/Olympus'; DROP TABLE sample;--")).toThrow('record/time-zone');
  });
});
