import { VanewrightError, type Problem } from '../core/error/index.ts';
import { INSTRUMENT_FILE_MOST_BYTES } from '../core/instrument/index.ts';
import { makeParts, partNames } from '../core/make/index.ts';
import {
  checkAdditions,
  photoFiles,
  publishKit,
  type GivenCertificate,
  type Kit,
  type Photo,
} from '../core/publish/index.ts';
import type { InstrumentFiles, OutputFile, StopSign, Written } from '../ports/index.ts';
import { inPlace, readDesign } from './design.ts';
import type { MakePorts } from './makeInstrument.ts';
import { proveInstrument, type ProvedDesign, type ProveRequest } from './proveInstrument.ts';

/** What to publish, and where. */
export interface PublishRequest extends ProveRequest {
  readonly out: string;
  /** Folder that `fit --out` has written; `null` for none. */
  readonly fitFolder: string | null;
  /** Folder of the maker's photos; `null` for none. */
  readonly photos: string | null;
  /** SPDX names of licences. */
  readonly licences: readonly string[];
  /** Who made it; `null` where that is not to be told. */
  readonly by: string | null;
}

/** A kit with the proof behind it, and what was written. */
export interface PublishedKit extends ProvedDesign {
  readonly kit: Kit;
  readonly written: Written;
  /** Printed parts this design cannot have, each with its cure. */
  readonly leftOut: readonly Problem[];
}

/** A photo as a camera makes it is smaller. [byte] */
const PHOTO_MOST_BYTES = 32 * 1024 * 1024;
/** A certificate is far smaller. [byte] */
const CERTIFICATE_MOST_BYTES = 16 * 1024 * 1024;

async function certificateIn(files: InstrumentFiles, folder: string): Promise<GivenCertificate> {
  const path = (name: string): string => `${folder.replace(/\/+$/, '')}/${name}`;
  const [json, html, pdf] = await Promise.all([
    files.readText(path('certificate.json'), CERTIFICATE_MOST_BYTES),
    files.readText(path('certificate.html'), CERTIFICATE_MOST_BYTES),
    files.readBytes(path('certificate.pdf'), CERTIFICATE_MOST_BYTES),
  ]);
  return { json, html, pdf, from: folder };
}

/** A photo, or `null` where there is none of that name. */
async function photoIn(files: InstrumentFiles, folder: string, file: string): Promise<Photo | null> {
  try {
    return { file, bytes: await files.readBytes(`${folder.replace(/\/+$/, '')}/${file}`, PHOTO_MOST_BYTES) };
  } catch (error) {
    const isMissing =
      error instanceof VanewrightError && error.problems.every(({ code }) => code === 'files/not-found');
    if (isMissing) return null;
    throw error;
  }
}

/** Photos under the names of the list, one a name. @throws `publish/no-photos` */
async function photosIn(files: InstrumentFiles, folder: string): Promise<Photo[]> {
  const byName = new Map<string, Photo>();
  for (const file of photoFiles) {
    const name = file.slice(0, file.lastIndexOf('.'));
    const photo = byName.has(name) ? null : await photoIn(files, folder, file);
    if (photo) byName.set(name, photo);
  }
  if (byName.size > 0) return [...byName.values()];
  throw new VanewrightError({
    code: 'publish/no-photos',
    what: 'The folder holds no photo under a name of the list.',
    where: '--photos',
    got: folder,
    allowed: `names such as ${photoFiles[0]} or disc.png; docs/publish.md lists them`,
    fix: `Name your photos by what they show, such as ${photoFiles[0]}, or leave --photos out.`,
  });
}

/** The instrument file, and the maker's own words where it names them. */
async function sourcesOf(
  files: InstrumentFiles,
  path: string,
  codeFile: string | null,
): Promise<OutputFile[]> {
  const own = { path: 'instrument.yaml', content: await files.readText(path, INSTRUMENT_FILE_MOST_BYTES) };
  if (codeFile === null) return [own];
  const beside = path.includes('/') ? `${path.slice(0, path.lastIndexOf('/'))}/${codeFile}` : codeFile;
  const name = codeFile.slice(codeFile.lastIndexOf('/') + 1);
  return [own, { path: name, content: await files.readText(beside, INSTRUMENT_FILE_MOST_BYTES) }];
}

/**
 * Writes everything that is needed to publish a build: all files, a page that lists them, how it works, one zip.
 *
 * @throws VanewrightError when the design cannot be made, or what the maker adds does not fit it; nothing is written then.
 */
export async function publishInstrument(
  ports: MakePorts,
  request: PublishRequest,
  stop: StopSign,
): Promise<PublishedKit> {
  const { files, output, fonts } = ports;
  const certificate = request.fitFolder === null ? null : await certificateIn(files, request.fitFolder);
  const photos = request.photos === null ? [] : await photosIn(files, request.photos);
  const { licences, by } = request;
  // What is quickly refused comes before what takes long.
  checkAdditions((await readDesign(files, request.path)).instrument, { certificate, photos, licences, by });
  const proved = await proveInstrument(files, request);
  const { instrument, disc, head, placed } = proved.design;
  const sources = await sourcesOf(files, request.path, instrument.disc.codeFile);
  const setting = async () => ({ paper: 'a4', font: await fonts.sans() }) as const;
  const design = { instrument, head, proof: proved.proof };
  const { kit, leftOut } = await inPlace(placed, async () => {
    const made = await makeParts({ ...design, disc }, partNames, setting);
    return {
      kit: publishKit({ design, sources, made: made.files, certificate, photos, licences, by }),
      leftOut: made.leftOut,
    };
  });
  const written = await output.write(request.out, kit.files, stop, 'result');
  return { ...proved, kit, written, leftOut: leftOut.map(placed) };
}
