import type { BudgetItem } from '../../../core/proof/index.ts';
import type { QuickProof } from '../../engine/quickProof.ts';
import { shownDegrees } from '../../parts/numbers.ts';
import { saveFile } from '../../parts/saveFile.ts';
import { words } from '../../words/en.ts';

/** Items below this are not shown: bars of no length. [deg] */
const LEAST_DEG = 0.005;

/** The error budget as bars, the worst item marked. */
export function BudgetPanel({ quick }: { readonly quick: QuickProof }) {
  const text = words.prove;
  const { budget, pictures } = quick;
  const items = budget.items.filter(({ maxDeg }) => maxDeg >= LEAST_DEG);
  // Half a step is what the count itself costs; the worst item is what a maker can do something about.
  const worst = items.find(({ item }) => item !== 'quantisation');
  const most = Math.max(...items.map(({ maxDeg }) => maxDeg), LEAST_DEG);
  return (
    <section class="panel budget">
      <h2>{text.budgetTitle}</h2>
      <p>
        {budget.worst} {text.combined(shownDegrees(budget.combinedDeg))}
      </p>
      <ol>
        {items.map((item) => (
          <BudgetBar key={item.item} item={item} share={item.maxDeg / most} isWorst={item === worst} />
        ))}
      </ol>
      <p class="hint">{text.budgetHint}</p>
      <button type="button" class="small" onClick={() => saveFile('budget.svg', pictures.budget)}>
        {words.shell.saveSvg('budget')}
      </button>
    </section>
  );
}

interface BudgetBarProps {
  readonly item: BudgetItem;
  /** Length of its bar over the longest. [-] */
  readonly share: number;
  readonly isWorst: boolean;
}

function BudgetBar({ item: { title, kind, maxDeg, formula, source }, share, isWorst }: BudgetBarProps) {
  const text = words.prove;
  return (
    <li data-worst={isWorst || undefined}>
      <details>
        <summary>
          <span class="what">
            {title} {isWorst ? <strong class="tag">{text.worstItem}</strong> : null}
          </span>
          <span class="length" aria-hidden="true">
            <span class={kind} style={{ transform: `scaleX(${share.toFixed(4)})` }} />
          </span>
          <span class="value">{shownDegrees(maxDeg)}</span>
        </summary>
        <p>
          {text.kinds[kind]}: {formula}
        </p>
        <p class="hint">{source}</p>
      </details>
    </li>
  );
}
