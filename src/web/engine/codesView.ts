import { adviseCodes } from '../../app/api.ts';
import type { RankedCode, SectorFit } from '../../core/codes/index.ts';
import { INSTRUMENT_FILE_MOST_BYTES, readInstrument } from '../../core/instrument/index.ts';
import type { InstrumentFiles } from '../../ports/index.ts';

/** A code for this need, without its words. */
export type CodeView = Omit<RankedCode, 'table'>;

/** Every code for this need, best first, and which wind roses the count fills evenly. */
export interface CodesView {
  readonly codes: readonly CodeView[];
  readonly roses: readonly SectorFit[];
}

/** What codes would do for a file's need, also where the code it names cannot. */
export async function codesView(files: InstrumentFiles, path: string): Promise<CodesView> {
  const { instrument } = readInstrument(await files.readText(path, INSTRUMENT_FILE_MOST_BYTES), path);
  const { codes, roses } = adviseCodes({ instrument });
  return {
    codes: codes.map(({ name, options, title, verdict, reasons, measures }) => ({
      ...{ name, options, title, verdict, reasons, measures },
    })),
    roses,
  };
}
