import { fileURLToPath } from 'node:url';
import { nodeFonts, nodeInstrumentFiles, nodeOutputFolder } from '../adapters/nodeFiles/index.ts';
import { nodeBuildWorkers } from '../adapters/nodeWorkers/index.ts';
import { INSTRUMENT_FILE, type ExampleName } from '../app/api.ts';
import type { BuildWorkers, Fonts, InstrumentFiles, OutputFolder } from '../ports/index.ts';

/** The real parts behind the command line. */
export interface Parts {
  readonly files: InstrumentFiles;
  readonly output: OutputFolder;
  readonly fonts: Fonts;
  /** Path of the instrument file of an example that comes with the tool. */
  exampleFile(name: ExampleName): string;
  /** Threads that make virtual builds; none is started before there is work for it. */
  readonly workers: BuildWorkers;
}

/**
 * Output that Ctrl-C stops between two files. Outside of writing the signals keep their usual meaning, so that a long
 * calculation ends at once, and a second signal always ends the command.
 */
function stoppedBySignals(output: OutputFolder, stopper: AbortController): OutputFolder {
  return {
    async write(...request) {
      const stop = (): void => stopper.abort();
      process.once('SIGINT', stop).once('SIGTERM', stop);
      try {
        return await output.write(...request);
      } finally {
        process.off('SIGINT', stop).off('SIGTERM', stop);
      }
    },
  };
}

/** Chooses an adapter for every port; the only place in the command line that names one. */
export function wire(stopper: AbortController): Parts {
  return {
    files: nodeInstrumentFiles,
    fonts: nodeFonts,
    exampleFile: (name) =>
      fileURLToPath(new URL(`../../examples/${name}/${INSTRUMENT_FILE}`, import.meta.url)),
    workers: nodeBuildWorkers(),
    output: stoppedBySignals(nodeOutputFolder, stopper),
  };
}
