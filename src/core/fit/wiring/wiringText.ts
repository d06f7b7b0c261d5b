import type { FittedWiring } from '../fit.ts';
import { explainedShare, type RankedWiring } from './rankWirings.ts';

/** Alternatives that are told; a code that looks like itself in more ways is told so by its confidence. [-] */
const ALTERNATIVES_MOST = 12;

/** True when the inputs stand exactly in the opposite order. */
function isOrderReversed({ wiring, moved }: RankedWiring): boolean {
  const last = wiring.channels.length - 1;
  return moved.length > 2 && wiring.channels.every((wire, c) => wire?.column === last - c);
}

/** The wiring that is believed, with what else would explain as much. */
export function wiringOf(
  first: RankedWiring,
  confidence: number,
  alternatives: readonly string[],
): FittedWiring {
  return {
    explainedShare: explainedShare(first.followed),
    confidence,
    alternatives: alternatives.slice(0, ALTERNATIVES_MOST),
    isOrderReversed: isOrderReversed(first),
    reversed: first.reversed,
  };
}

/** A wiring in words, as far as it differs from the drawing. */
export function alternativeText(
  { wiring, moved, inverted, reversed }: RankedWiring,
  pins: readonly string[],
): string {
  const parts = [
    ...moved.map(
      (c) => `channel ${c} on ${pins[wiring.channels[c]!.column] ?? `column ${wiring.channels[c]!.column}`}`,
    ),
    ...inverted.map((c) => `channel ${c} inverted`),
    ...(reversed ? ['the sense reversed'] : []),
  ];
  return parts.length > 0 ? parts.join(', ') : 'everything as drawn, the vane turned the other way';
}
