/** What is done to an invented vane, and how badly. */
export type Damage = { readonly fromMs: number; readonly untilMs: number } & (
  | { readonly kind: 'stuck-channel'; readonly channel: number; readonly level: '0' | '1' }
  | {
      readonly kind:
        'frozen-vane' | 'seized-cups' | 'condensation' | 'lost-power' | 'clock-jump' | 'contact-bounce';
    }
  | { readonly kind: 'slipped-clamp'; readonly byDeg: number }
  /** Light lost in a day. [1/d] */
  | { readonly kind: 'dim-light'; readonly channel: number; readonly perDay: number }
  /** Light that gets in at noon, of the full light. [-] */
  | { readonly kind: 'ambient-leak'; readonly share: number }
  /** Light left in one window of one channel. [-] */
  | {
      readonly kind: 'dirty-sector';
      readonly channel: number;
      readonly position: number;
      readonly left: number;
    }
  /** Wind that worn cups need to start. [m/s] */
  | { readonly kind: 'bearing-wear'; readonly startMPerS: number }
  /** Chance of a channel to read wrong in any sample. [-] */
  | { readonly kind: 'chatter' | 'illegal-words'; readonly channel: number; readonly chance: number }
  | { readonly kind: 'skipped-steps'; readonly chance: number }
);

/** Damage of one kind that is at work just then. */
export function atWork<K extends Damage['kind']>(
  damages: readonly Damage[],
  kind: K,
  atMs: number,
): (Damage & { kind: K }) | undefined {
  return damages.find((damage) => damage.kind === kind && atMs >= damage.fromMs && atMs < damage.untilMs) as
    (Damage & { kind: K }) | undefined;
}
