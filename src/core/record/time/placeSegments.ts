import type { Placed } from './arrivalClock.ts';

/** One run of a controller, from a start to the next; known only by its counter. */
export interface SegmentSpan {
  /** Source it belongs to: the sequence number of its first raw entry. [-] */
  readonly stream: number;
  /** 0 for the first of the source. [-] */
  readonly segment: number;
  readonly fromLine: number;
  readonly toLine: number;
  /** Counter at its first and last line. [ms] */
  readonly fromMs: number;
  readonly toMs: number;
  /** Moments that the reader itself knows for this segment. */
  readonly known: readonly Moment[];
}

/** A remembered moment: this counter of this segment was at that instant. */
export interface Moment {
  /** [ms] */
  readonly counterMs: number;
  /** [ms UTC] */
  readonly atMs: number;
  /** How surely it is remembered. [ms], >= 0 */
  readonly withinMs: number;
}

/** How the counter of one segment turns into instants. */
export interface Placement {
  readonly stream: number;
  readonly segment: number;
  /** In the order of the counter; two or more also tell how fast the counter runs. n >= 1 */
  readonly moments: readonly Moment[];
  /** Whether moments of this segment tell it, or only those of its neighbours. */
  readonly by: 'moments' | 'neighbours';
  /** By how much the counter may run fast or slow where only one moment tells. [-] */
  readonly driftShare: number;
}

/** A ceramic resonator is good to 0.5 % (common practice); a crystal is far better. [-] */
export const COUNTER_DRIFT_SHARE = 0.005;

/**
 * The instant of a counter in a placed segment: between two moments in proportion, beyond them at their rate.
 *
 * @param counterMs - Unwrapped counter. [ms]
 * @param placement - As `placeSegments` gives it.
 * @source derived: straight line through two moments; errors of both ends add up in proportion
 * @check src/core/record/time/placeSegments.test.ts
 */
export function placedInstant(counterMs: number, { moments, driftShare }: Placement): Placed {
  if (moments.length === 1) {
    const [only] = moments as [Moment];
    const away = counterMs - only.counterMs;
    return { atMs: only.atMs + away, withinMs: only.withinMs + driftShare * Math.abs(away) };
  }
  let i = 1;
  while (i < moments.length - 1 && moments[i]!.counterMs < counterMs) i++;
  const [a, b] = [moments[i - 1]!, moments[i]!];
  const share = (counterMs - a.counterMs) / (b.counterMs - a.counterMs);
  const atMs = a.atMs + share * (b.atMs - a.atMs);
  return { atMs, withinMs: Math.abs(1 - share) * a.withinMs + Math.abs(share) * b.withinMs };
}

/** The moments of a segment in order, each counter once. */
function inOrder(moments: readonly Moment[]): Moment[] {
  const sorted = [...moments].sort((a, b) => a.counterMs - b.counterMs || a.withinMs - b.withinMs);
  return sorted.filter((moment, i) => i === 0 || moment.counterMs > sorted[i - 1]!.counterMs);
}

/** Unplaced segments of one source between two placed ones share the time that is left over. */
function between(chain: readonly SegmentSpan[], after: Placed | null, before: Placed | null): Placement[] {
  if (!after || !before) return [];
  const lengths = chain.map(({ fromMs, toMs }) => toMs - fromMs);
  const total = lengths.reduce((sum, length) => sum + length, 0);
  const spareMs = before.atMs - after.atMs - total;
  if (spareMs < 0) return [];
  let from = after.atMs;
  return chain.map(({ stream, segment, fromMs }, i) => {
    const atMs = from + spareMs / 2;
    from += lengths[i]!;
    const withinMs = spareMs / 2 + Math.max(after.withinMs, before.withinMs);
    return {
      stream,
      segment,
      moments: [{ counterMs: fromMs, atMs, withinMs }],
      by: 'neighbours',
      driftShare: COUNTER_DRIFT_SHARE,
    };
  });
}

/**
 * Places segments in time: by their own moments where there are any, else between their neighbours.
 *
 * @param spans - In the order in which the controller ran.
 * @param momentsOf - Remembered moments of a segment; those the reader knows itself come with the span.
 * @returns One placement for each segment that can be placed; the others stay without a time.
 * @check src/core/record/time/placeSegments.test.ts
 */
export function placeSegments(
  spans: readonly SegmentSpan[],
  momentsOf: (span: SegmentSpan) => readonly Moment[],
): Placement[] {
  const own = spans.map((span): Placement | null => {
    const moments = inOrder([...span.known, ...momentsOf(span)]);
    const { stream, segment } = span;
    if (moments.length === 0) return null;
    return { stream, segment, moments, by: 'moments', driftShare: COUNTER_DRIFT_SHARE };
  });
  const placed: Placement[] = [];
  for (let i = 0; i < spans.length;) {
    const mine = own[i]!;
    if (mine) {
      placed.push(mine);
      i++;
      continue;
    }
    let end = i;
    while (end < spans.length && own[end] === null) end++;
    const after = i > 0 ? placedInstant(spans[i - 1]!.toMs, own[i - 1]!) : null;
    const before = end < spans.length ? placedInstant(spans[end]!.fromMs, own[end]!) : null;
    placed.push(...between(spans.slice(i, end), after, before));
    i = end;
  }
  return placed;
}
