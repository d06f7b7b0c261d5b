import { VanewrightError } from '../core/error/index.ts';
import { EXIT, type Exit } from './exit.ts';
import { refusal } from './outcome.ts';
import { NotPrinted, print } from './print.ts';
import type { Work } from './work.ts';

/** A chosen command with its work. */
export interface Chosen {
  readonly command: string;
  readonly work: Work;
}

async function refuse({ command }: Chosen, isJson: boolean, error: VanewrightError): Promise<Exit> {
  if (isJson) await print(process.stdout, `${JSON.stringify(refusal(command, error.problems), null, 2)}\n`);
  else await print(process.stderr, `${error.message}\n`);
  return EXIT.badInput;
}

async function attempt(chosen: Chosen, isJson: boolean, stop: AbortSignal): Promise<Exit> {
  try {
    const { exit, text, document } = await chosen.work(stop);
    await print(process.stdout, isJson ? `${JSON.stringify(document, null, 2)}\n` : `${text}\n`);
    return exit;
  } catch (error) {
    if (stop.aborted) {
      await print(process.stderr, 'Stopped; nothing was changed.\n');
      return EXIT.stopped;
    }
    if (error instanceof VanewrightError) return refuse(chosen, isJson, error);
    throw error;
  }
}

/**
 * Runs the work and prints what it has to say, in text or as one document.
 *
 * @param stop - Given when the maker stops a command that is writing.
 */
export async function settle(chosen: Chosen, isJson: boolean, stop: AbortSignal): Promise<Exit> {
  try {
    return await attempt(chosen, isJson, stop);
  } catch (error) {
    if (!(error instanceof NotPrinted)) throw error;
    await print(process.stderr, `${error.message}\n`).catch(() => {});
    return EXIT.notPrinted;
  }
}
