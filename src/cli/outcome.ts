import type { Problem } from '../core/error/index.ts';
import type { Exit } from './exit.ts';

/** What a command has to say, once as text for people and once as a document for programs. */
export interface Outcome {
  readonly exit: Exit;
  /** Printed to stdout unless `--json` is given. */
  readonly text: string;
  /** The one document that `--json` prints; schema/output.schema.json describes it. */
  readonly document: Record<string, unknown>;
}

/** Document of a command that was refused. */
export function refusal(command: string, problems: readonly Problem[]): Record<string, unknown> {
  return { command, ok: false, problems };
}
