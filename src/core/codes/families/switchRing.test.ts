import { expect, it } from 'vitest';
import { buildCode, codeProblems, codeProperties, lightFaultsSeen } from '../index.ts';

it('tells sixteen directions with eight switches, one or two closed at a time', () => {
  const table = buildCode('switch-ring', 16);
  expect([table.tracks.length, table.channels.length]).toEqual([1, 8]);
  const closed = table.words.map((word) => [...word].filter((level) => level === '1').length);
  expect(closed).toEqual([2, 1, 2, 1, 2, 1, 2, 1, 2, 1, 2, 1, 2, 1, 2, 1]);
});

it('changes one switch at a time for any even count from six, and no switch or all of them is a fault', () => {
  for (let positions = 6; positions <= 64; positions += 2) {
    const properties = codeProperties(buildCode('switch-ring', positions));
    expect(properties.singleStep, String(positions)).toBe(true);
    expect(properties.shortestRunSteps).toBe(3);
    expect(lightFaultsSeen(properties, 1)).toEqual({ lampOff: true, flooded: true });
  }
});

it.each([
  [7, '6 or 8'],
  [4, '6'],
  [15, '14 or 16'],
])('refuses %i directions and names %s', (positions, nearest) => {
  expect(codeProblems('switch-ring', positions)).toMatchObject([
    { code: 'codes/not-a-switch-ring', fix: `Set need.positions to ${nearest}.` },
  ]);
});
