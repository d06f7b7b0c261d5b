import { Problems } from '../../parts/Problems.tsx';
import { Verdict } from '../../parts/Verdict.tsx';
import { useStore } from '../../project/store.ts';
import type { PageParts } from '../../shell/pageParts.ts';
import { words } from '../../words/en.ts';
import { BudgetPanel } from './BudgetPanel.tsx';
import { CausesPanel } from './CausesPanel.tsx';
import { ComparePanel } from './ComparePanel.tsx';
import { PassPanel } from './PassPanel.tsx';
import { TolerancePanel } from './TolerancePanel.tsx';
import { TurnPanel } from './TurnPanel.tsx';
import { useProof } from './useProof.ts';
import { YieldPanel } from './YieldPanel.tsx';
import './prove.css';

/** Will it read right, and what should be tightened first. */
export function ProvePage(parts: PageParts) {
  const { design, answer } = useStore(parts.project.state);
  const { quick, full, isRefining } = useProof(parts);
  const text = words.prove;
  const problems = answer?.ok === false ? answer.problems : [];
  const shown = quick?.ok ? quick.value : null;
  const proof = full?.ok ? full.value.proof : null;
  const says = problems.length > 0 || proof?.verdict === 'no' ? 'no' : proof === null ? 'wait' : 'yes';
  return (
    <>
      <Problems problems={problems} />
      {shown === null || !design ? (
        <p role="status">{problems.length > 0 ? text.saysUnreadable : text.wait}</p>
      ) : (
        <>
          <div class="halves">
            <YieldPanel quick={shown} need={design.instrument.need} isRefining={isRefining} />
            <TolerancePanel {...parts} />
          </div>
          <BudgetPanel quick={shown} />
          <PassPanel {...parts} proof={proof} />
          <CausesPanel proof={proof} />
          <TurnPanel {...parts} quick={shown} />
          <ComparePanel {...parts} />
        </>
      )}
      <Problems problems={full?.ok ? full.value.warnings : []} isNote />
      <Verdict says={says} next="make">
        {problems.length > 0 ? text.saysUnreadable : null}
        {problems.length === 0 && proof === null ? text.saysWait : null}
        {problems.length === 0 && proof ? (proof.verdict === 'yes' ? text.yes : text.no) : null}
        {problems.length === 0 && proof ? (
          <ul class="reasons">
            {proof.reasons.map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
        ) : null}
      </Verdict>
    </>
  );
}
