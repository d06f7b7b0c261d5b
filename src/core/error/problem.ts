/** What a maker is told when something is wrong: always the same five answers. */
export interface Problem {
  /** Stable name, `step/what-is-wrong`; a heading in docs/errors.md. */
  readonly code: string;
  /** One sentence: what is wrong, without blame or jargon. */
  readonly what: string;
  /** Field path of the instrument file (`disc.diameterMm`), or `file:line:column › field`. */
  readonly where: string;
  /** The value found, with its unit. */
  readonly got: string;
  /** What would be accepted, with its unit. */
  readonly allowed: string;
  /** A value that works, or the one next step. */
  readonly fix: string;
}

/** One line a field, as every face of the tool prints it. */
export function problemText(problem: Problem): string {
  return [
    `${problem.code}: ${problem.what}`,
    `  where:   ${problem.where}`,
    `  got:     ${problem.got}`,
    `  allowed: ${problem.allowed}`,
    `  fix:     ${problem.fix}`,
  ].join('\n');
}

/** Thrown where bad input ends the work; carries every problem found, one or more. */
export class VanewrightError extends Error {
  override readonly name = 'VanewrightError';
  readonly problems: readonly Problem[];

  /** @param problems - One problem or several, in the order they should be read. */
  constructor(problems: Problem | readonly [Problem, ...Problem[]]) {
    const all = 'code' in problems ? [problems] : problems;
    super(all.map(problemText).join('\n'));
    this.problems = all;
  }
}

/**
 * A promise of our own code that was broken: never the maker's fault.
 *
 * The text asks for the instrument file, since that is what reproduces it.
 */
export class BrokenPromise extends Error {
  override readonly name = 'BrokenPromise';

  constructor(promise: string) {
    super(
      `${promise} This is a fault in vanewright, not in your file. Please report it with your instrument file.`,
    );
  }
}

/** Throws when there is at least one problem; the usual end of a checking function. */
export function throwIfAny(problems: readonly Problem[]): void {
  const [first, ...rest] = problems;
  if (first) throw new VanewrightError([first, ...rest]);
}
