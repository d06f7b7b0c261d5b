import { VanewrightError, type Problem } from '../../src/core/error/index.ts';

/** Problems that some work throws; none when it does not throw. */
export function problemsOf(work: () => unknown): readonly Problem[] {
  try {
    work();
    return [];
  } catch (error) {
    if (error instanceof VanewrightError) return error.problems;
    throw error;
  }
}

/** Problems that a promise ends with; none when it keeps. */
export async function problemsOfPromise(work: Promise<unknown>): Promise<readonly Problem[]> {
  return work.then(
    () => [],
    (error: unknown) =>
      problemsOf(() => {
        throw error;
      }),
  );
}
