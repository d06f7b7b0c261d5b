import type { Alert } from '../../src/ports/index.ts';

const sinceMs = Date.parse('2026-02-03T04:05:00Z');

/** An invented alert of the jetty. */
export function someAlert(state: Alert['state'] = 'raised'): Alert {
  return {
    state,
    station: 'jetty',
    fault: 'stuck-channel/channel-3',
    atMs: sinceMs + 3_600_000,
    finding: {
      kind: 'stuck-channel',
      sinceMs,
      untilMs: state === 'raised' ? null : sinceMs + 7_200_000,
      noticedMs: sinceMs + 3_600_000,
      channels: [3],
      positions: [],
      title: 'Channel 3 always reads 1',
      evidence: 'It has not changed for 9 h.',
      falseAlarmChance: 0.01,
      todo: 'Check the light of channel 3.',
      spoils: 'heading',
      daysLeft: null,
    },
  };
}
