import type { Finding } from './finding.ts';

const DAY_MS = 86_400_000;
/** A cause may be told this much later than what it does. [ms] */
const AROUND_MS = 4 * DAY_MS;

/** Which fault shows as which other one as well. */
const shows: readonly { readonly cause: Finding['kind']; readonly effect: Finding['kind'] }[] = [
  { cause: 'ambient-leak', effect: 'frozen-vane' },
  { cause: 'ambient-leak', effect: 'stuck-channel' },
  { cause: 'ambient-leak', effect: 'illegal-words' },
  { cause: 'ambient-leak', effect: 'dirty-sector' },
  { cause: 'ambient-leak', effect: 'dim-light' },
  { cause: 'ambient-leak', effect: 'condensation' },
  { cause: 'bearing-wear', effect: 'seized-cups' },
  { cause: 'dim-light', effect: 'stuck-channel' },
  { cause: 'frozen-vane', effect: 'stuck-channel' },
  { cause: 'frozen-vane', effect: 'slipped-clamp' },
  { cause: 'frozen-vane', effect: 'dirty-sector' },
  { cause: 'stuck-channel', effect: 'slipped-clamp' },
  { cause: 'stuck-channel', effect: 'dirty-sector' },
  { cause: 'illegal-words', effect: 'dirty-sector' },
];

/** Means that follow slowly still show the effect when its cause is over, so only its beginning counts. */
function isDuring(effect: Finding, cause: Finding): boolean {
  const untilMs = cause.untilMs ?? Infinity;
  return effect.sinceMs >= cause.sinceMs - AROUND_MS && effect.sinceMs <= untilMs + AROUND_MS;
}

/**
 * Findings without those that another one explains: one fault is named once, by its cause.
 *
 * @param floodedPosition - Position of the word with every channel lit, which daylight shows; `null` = there is none. [-]
 */
export function explained(findings: readonly Finding[], floodedPosition: number | null): Finding[] {
  return findings.filter((effect) => {
    const causes = shows.filter((pair) => pair.effect === effect.kind).map(({ cause }) => cause);
    return !findings.some((cause) => {
      if (!causes.includes(cause.kind) || !isDuring(effect, cause)) return false;
      // A vane that stands elsewhere than where daylight would show it stands by itself.
      if (effect.kind === 'frozen-vane' && cause.kind === 'ambient-leak')
        return effect.positions[0] === floodedPosition;
      return (
        cause.kind !== 'dim-light' || cause.channels.some((channel) => effect.channels.includes(channel))
      );
    });
  });
}
