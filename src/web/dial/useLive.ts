import { useMemo } from 'preact/hooks';
import type { DesignView } from '../engine/designView.ts';
import { faultsOf, type FaultSettings } from './faults.ts';
import { headOf, liveModel, type LiveModel } from './liveModel.ts';
import type { Turn } from './turn.ts';

/** The model of a design under the shaft of the page; `null` where its head cannot read it. */
export function useLive(view: DesignView | null, turn: Turn, faults: FaultSettings): LiveModel | null {
  const head = useMemo(() => (view && view.faults.length === 0 ? headOf(view) : null), [view]);
  return useMemo(
    () => (view && head ? liveModel(view, head, turn, faultsOf(faults, head)) : null),
    [view, head, turn, faults],
  );
}
