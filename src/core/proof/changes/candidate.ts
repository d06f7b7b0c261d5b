import type { DiscSpec } from '../../disc/index.ts';
import type { CircuitSpec, HeadPlan, HeadSpec } from '../../head/index.ts';
import type { FieldEdit } from '../../instrument/index.ts';

/** One thing a maker may change, and the design it makes. */
export interface Candidate {
  readonly title: string;
  readonly how: string;
  /** The same as fields of the instrument file. n ≥ 1 */
  readonly edits: readonly FieldEdit[];
  /** The design with that change alone. @throws VanewrightError where it cannot be made. */
  plan(): HeadPlan;
}

/** What a candidate differs in. */
export interface Edit {
  readonly code?: { readonly family: string; readonly positions: number };
  readonly disc?: Partial<DiscSpec>;
  readonly spec?: Partial<HeadSpec>;
  readonly circuit?: Partial<CircuitSpec>;
}

/** Fields of the instrument file by their paths. */
export type Fields = Readonly<Record<string, FieldEdit['value']>>;

/** Those fields as edits of the file. */
export function editsOf(fields: Fields): FieldEdit[] {
  return Object.entries(fields).map(([path, value]) => ({ path: path.split('.'), value }));
}

/** Makes a candidate of its title, how a maker does it, the fields it sets and what the design differs in. */
export type Make = (title: string, how: string, fields: Fields, edit: Edit) => Candidate;
