import { worthwhileCauses, type Proof } from '../../../core/proof/index.ts';
import { shownDegrees, shownNumber } from '../../parts/numbers.ts';
import { words } from '../../words/en.ts';
import { percent } from './shares.ts';

/** Tolerances that are worth tightening, most worthwhile first, and the rival code. */
export function CausesPanel({ proof }: { readonly proof: Proof | null }) {
  const text = words.prove;
  if (proof === null) return null;
  const causes = worthwhileCauses(proof);
  return (
    <section class="panel">
      <h2>{text.causesTitle}</h2>
      {causes.length === 0 ? <p>{text.causesNone}</p> : null}
      <ol>
        {causes.map(({ cause, title, advice, yieldWithout, p95WithoutDeg, loosestFactor }) => (
          <li key={cause}>
            <strong>{title}.</strong> {advice}{' '}
            {text.without(percent(yieldWithout.value), shownDegrees(p95WithoutDeg))}{' '}
            {loosestFactor === null ? '' : text.loosest(shownNumber(loosestFactor, 1))}
          </li>
        ))}
      </ol>
      {proof.rival === null ? null : (
        <p>
          {text.rival(proof.rival.family, percent(proof.rival.builds.yield.value))} {proof.rival.why}
        </p>
      )}
    </section>
  );
}
