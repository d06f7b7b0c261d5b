import type { Outcome } from './outcome.ts';

/** Work of a command, to be run once its words have been read; the sign tells it to stop. */
export type Work = (stop: AbortSignal) => Promise<Outcome>;

/** Takes the command that was chosen and its work. */
export type Take = (command: string, work: Work) => void;
