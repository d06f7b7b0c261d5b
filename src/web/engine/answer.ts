import { VanewrightError, type Problem } from '../../core/error/index.ts';

/** What the engine gives back: a result, or everything that is wrong with what it was given. */
export type Answer<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly Problem[] };

/** Runs work and turns its problems into an answer; faults of ours are thrown on. */
export async function answerOf<T>(work: () => T | Promise<T>): Promise<Answer<T>> {
  try {
    return { ok: true, value: await work() };
  } catch (error) {
    if (error instanceof VanewrightError) return { ok: false, problems: error.problems };
    throw error;
  }
}
