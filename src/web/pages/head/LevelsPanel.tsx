import { nearestE24, type HeadPlan } from '../../../core/head/index.ts';
import { shownNumber } from '../../parts/numbers.ts';
import type { PageParts } from '../../shell/pageParts.ts';
import { words } from '../../words/en.ts';

interface HeadProps {
  readonly head: HeadPlan;
}

const whole = (value: number): string => shownNumber(value, 0);

/** Counts of light and dark with the thresholds between them. */
export function LevelsPanel({ head }: HeadProps) {
  const text = words.head;
  const { levels, marks } = head;
  const { litCounts, darkCounts, lowCounts, highCounts, litMarginSigma, darkMarginSigma } = levels;
  return (
    <section class="panel">
      <h2>{text.levelsTitle}</h2>
      {marks === null ? (
        <dl class="readings">
          <div>
            <dt>{text.lit}</dt>
            <dd>{text.counts(whole(litCounts))}</dd>
          </div>
          <div>
            <dt>{text.dark}</dt>
            <dd>{text.counts(whole(darkCounts))}</dd>
          </div>
          <div>
            <dt>{text.thresholds}</dt>
            <dd>{text.between(whole(lowCounts), whole(highCounts))}</dd>
          </div>
          <div>
            <dt>{text.margin}</dt>
            <dd>{whole(Math.min(litMarginSigma, darkMarginSigma))}</dd>
          </div>
        </dl>
      ) : (
        <p>{text.threeMarks}</p>
      )}
    </section>
  );
}

/** Which resistor is in use, and which is best. */
export function ResistorPanel({ head, project }: HeadProps & Pick<PageParts, 'project'>) {
  const text = words.head;
  const { resistorOhm, bestResistorOhm } = head.levels;
  if (head.marks?.kind === 'colours') return null;
  return (
    <section class="panel">
      <h2>{text.resistorTitle}</h2>
      <p>
        {text.resistorUsed(whole(resistorOhm))}{' '}
        {text.resistorBest(whole(bestResistorOhm), whole(nearestE24(bestResistorOhm)))}
      </p>
      {head.circuit.resistorOhm === null ? null : (
        <button type="button" onClick={() => void project.set(['circuit', 'resistorOhm'], null)}>
          {text.resistorTake}
        </button>
      )}
      <details>
        <summary>{text.resistorHow}</summary>
        <p>{text.resistorFormula}</p>
        <p class="hint">{text.resistorSource}</p>
      </details>
    </section>
  );
}

/** How fast the shaft may turn. */
export function SpeedPanel({ head, says }: HeadProps & { readonly says: string }) {
  const text = words.head;
  const { lagMs, loopMs } = head.speed;
  return (
    <section class="panel">
      <h2>{text.speedTitle}</h2>
      <p>{says}</p>
      <p>{text.speedParts(shownNumber(lagMs, 1), shownNumber(loopMs, 1))}</p>
      <details>
        <summary>{text.resistorHow}</summary>
        <p>{text.speedFormula}</p>
      </details>
    </section>
  );
}
