import type { DiscForm, DiscSpec, Drawn, Process } from './discSpec.ts';

/** What each process can make; the first is what it makes when nothing else is asked. */
const formsOf: Readonly<Record<Process['kind'], readonly [DiscForm['kind'], ...DiscForm['kind'][]]>> = {
  fdm: ['through-cut', 'relief', 'inlay'],
  laser: ['through-cut', 'relief'],
  film: ['overlay'],
  'colour-print': ['overlay'],
  pcb: ['copper'],
};

/** Forms that a process can make. n ≥ 1 */
export function possibleForms(kind: Process['kind']): readonly DiscForm['kind'][] {
  return formsOf[kind];
}

/** What a disc is made as: what was asked, or the usual form of its process. */
export function formOf({ form, process }: Pick<DiscSpec, 'form' | 'process'>): DiscForm {
  if (form) return form;
  const [usual] = formsOf[process.kind];
  if (usual === 'copper') return { kind: 'copper', copper: 'dark' };
  return usual === 'overlay' ? { kind: 'overlay' } : { kind: 'through-cut' };
}

/** True where the windows are holes, so that pieces can fall out and bridges can break. */
export function isPierced(spec: Pick<DiscSpec, 'form' | 'process'>): boolean {
  return formOf(spec).kind === 'through-cut';
}

/** Drawn as wanted. */
const AS_WANTED: Drawn = { scale: 1, edgeLossMm: 0, boreAllowanceMm: 0, footGrowthMm: 0 };

/** How the drawings of a disc differ from the part that is wanted. */
export function drawnOf({ drawn }: Pick<DiscSpec, 'drawn'>): Drawn {
  return drawn ?? AS_WANTED;
}
