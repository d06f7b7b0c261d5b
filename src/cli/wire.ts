import { nodeInstrumentFiles, nodeOutputFolder } from '../adapters/nodeFiles/index.ts';
import type { InstrumentFiles, OutputFolder } from '../ports/index.ts';

/** The real parts behind the command line. */
export interface Parts {
  readonly files: InstrumentFiles;
  readonly output: OutputFolder;
}

/** Chooses an adapter for every port; the only place in the command line that names one. */
export function wire(): Parts {
  return { files: nodeInstrumentFiles, output: nodeOutputFolder };
}
