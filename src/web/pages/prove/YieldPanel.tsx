import type { Need } from '../../../core/instrument/index.ts';
import type { QuickProof } from '../../engine/quickProof.ts';
import { Figure } from '../../parts/Figure.tsx';
import { shownDegrees, shownNumber } from '../../parts/numbers.ts';
import { words } from '../../words/en.ts';
import { percent, rate } from './shares.ts';

interface YieldPanelProps {
  readonly quick: QuickProof;
  readonly need: Need;
  readonly isRefining: boolean;
}

/** Yield with its interval, and the largest error of each build. */
export function YieldPanel({ quick, need, isRefining }: YieldPanelProps) {
  const text = words.prove;
  const { builds, pictures, limitDegPerS } = quick;
  const { value, low, high } = builds.yield;
  return (
    <section class="panel yield">
      <h2>{text.yieldTitle}</h2>
      <p class="large">
        <strong>{percent(value)}</strong>
      </p>
      <div class="interval" aria-hidden="true">
        <div class="range" style={{ left: percent2(low), width: percent2(high - low) }} />
        <div class="point" style={{ left: percent2(value) }} />
        <div class="wanted" style={{ left: percent2(need.wantedYield) }} />
      </div>
      <p>
        {text.yieldSays(percent(value), percent(low), percent(high), shownNumber(builds.builds, 0))}{' '}
        {text.wanted(percent(need.wantedYield))}
      </p>
      <p>
        {text.p95(shownDegrees(builds.maxErrorDeg.p95), shownDegrees(builds.maxErrorDeg.worst))}{' '}
        {text.speed(rate(limitDegPerS))}
      </p>
      <p role="status" class="hint">
        {isRefining ? text.refining : ''}
      </p>
      <Figure svg={pictures.builds} caption={text.buildsCaption} name="builds" />
    </section>
  );
}

/** A share as CSS writes it. */
function percent2(share: number): string {
  return `${(100 * share).toFixed(2)}%`;
}
