import { instrumentFileReference, instrumentJsonSchema } from '../core/instrument/index.ts';
import {
  budgetPicture,
  buildsPicture,
  codesPage,
  discPicture,
  formPictures,
  scriptSource,
  signalPicture,
  turnPicture,
  wordMap,
} from '../core/make/index.ts';
import { prove } from '../core/proof/index.ts';
import type { InstrumentFiles, OutputFile } from '../ports/index.ts';
import { readDesign } from './design.ts';
import { exampleFiles } from './examples/exampleFiles.ts';
import { DEFAULT_BUILDS, DEFAULT_SEED } from './proveInstrument.ts';

/** The script of the page that tells how a disc works, as text: every build of the library embeds the same bytes. */
function scriptFile(): OutputFile {
  const text = scriptSource().replace(/[`\\]|\$(?={)/g, '\\$&');
  return {
    path: 'src/core/make/explain/script/scriptText.ts',
    content: `/** The script of the page; \`npm run generate\` makes it from pageScript.ts and reading.ts. */\nexport const scriptText = \`${text}\`;\n`,
  };
}

const JETTY = 'examples/jetty/instrument.yaml';

/** Files of the repository that are made from the code: schema, field reference, pictures, data of the examples. */
export async function generatedFiles(files: InstrumentFiles, root: string): Promise<OutputFile[]> {
  const { head, code, disc, instrument } = await readDesign(files, `${root.replace(/\/$/, '')}/${JETTY}`);
  const svg = (name: string, markup: { readonly html: string }): OutputFile => ({
    path: `docs/pictures/${name}.svg`,
    content: `${markup.html}\n`,
  });
  const proof = prove({ instrument, disc, head, builds: DEFAULT_BUILDS, seed: DEFAULT_SEED });
  const { page, pictures } = codesPage();
  const examples = await exampleFiles(files, root.replace(/\/$/, ''));
  return [
    ...examples,
    scriptFile(),
    { path: 'docs/codes.md', content: page },
    ...formPictures().map(({ name, svg: content }) => ({ path: `docs/pictures/forms/${name}.svg`, content })),
    ...pictures.map(({ name, svg: content }) => ({ path: `docs/pictures/codes/${name}.svg`, content })),
    {
      path: 'schema/instrument.schema.json',
      content: `${JSON.stringify(instrumentJsonSchema(), null, 2)}\n`,
    },
    { path: 'docs/instrument-file.md', content: instrumentFileReference() },
    svg('jetty-disc', discPicture(head)),
    svg('jetty-signals', signalPicture(head)),
    svg('jetty-errors', turnPicture(proof, instrument.need)),
    svg('jetty-builds', buildsPicture(proof, instrument.need)),
    svg('jetty-budget', budgetPicture(proof)),
    svg('jetty-words', wordMap(code, instrument.disc.windowLevel)),
  ];
}
