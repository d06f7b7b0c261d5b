import { positionsApart, type CodeTable } from '../codes/index.ts';
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
  { cause: 'frozen-vane', effect: 'dim-light' },
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

/** Where else the disc seems to stand while a channel reads wrong at and beside a position. [-] */
function shownInstead(
  { words, positions, positionOf }: CodeTable,
  { channels, positions: where }: Finding,
): number[] {
  const [channel, position] = [channels[0]!, where[0]!];
  return [-1, 0, 1].flatMap((beside) => {
    const word = words[(position + beside + positions) % positions]!;
    const other = word[channel] === '0' ? '1' : '0';
    return positionOf(word.slice(0, channel) + other + word.slice(channel + 1)) ?? [];
  });
}

/** A window that reads wrong puts the light of its own position beside where it seems to be. */
function isGhost(code: CodeTable, effect: Finding, cause: Finding): boolean {
  if (cause.kind !== 'dirty-sector' || cause.spoils !== 'heading' || effect === cause) return false;
  return (
    effect.kind === 'dirty-sector' &&
    effect.spoils === 'nothing' &&
    isDuring(effect, cause) &&
    shownInstead(code, cause).some(
      (position) => positionsApart(position, effect.positions[0]!, code.positions) <= 1,
    )
  );
}

/** Flicker of one channel may be seen both while the cups stand and while they turn. */
function isSameChatter(effect: Finding, cause: Finding): boolean {
  return (
    cause.kind === 'chatter' &&
    effect.kind === 'chatter' &&
    effect !== cause &&
    cause.noticedMs < effect.noticedMs &&
    cause.channels[0] === effect.channels[0] &&
    isDuring(effect, cause)
  );
}

/**
 * Findings without those that another one explains: one fault is named once, by its cause.
 *
 * @param code - Of the disc.
 * @param windowLevel - Level that lets light through. [-]
 */
export function explained(findings: readonly Finding[], code: CodeTable, windowLevel: 0 | 1): Finding[] {
  // Where daylight shows the vane: every channel lit.
  const floodedPosition = code.positionOf(String(windowLevel).repeat(code.channels.length));
  return findings.filter((effect) => {
    const causes = shows.filter((pair) => pair.effect === effect.kind).map(({ cause }) => cause);
    return !findings.some((cause) => {
      if (isGhost(code, effect, cause) || isSameChatter(effect, cause)) return true;
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
