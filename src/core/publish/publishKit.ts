import { VanewrightError, type Problem } from '../error/index.ts';
import type { Instrument } from '../instrument/index.ts';
import { bundleZip, CAUTIONS_DEFER, cautionsFor, type MadeFile } from '../make/index.ts';
import { element, joined, type Markup } from '../report/index.ts';
import { certificateFigures, type CertificateFigures, type GivenCertificate } from './givenCertificate.ts';
import { kitPage } from './kitPage.ts';
import { isPhoto, wantedPhotos, type Photo } from './photoList.ts';
import { termsOf, termsText, type Terms } from './terms.ts';
import { testedWith, type TestedDesign, type TestedRow } from './testedWith.ts';

/** What a kit is made from. */
export interface KitRequest {
  readonly design: TestedDesign;
  /** The instrument file and what lies beside it that it names. */
  readonly sources: readonly MadeFile[];
  /** All that `make` makes. */
  readonly made: readonly MadeFile[];
  readonly certificate: GivenCertificate | null;
  readonly photos: readonly Photo[];
  /** SPDX names of licences. */
  readonly licences: readonly string[];
  /** Who made it; `null` where that is not to be told. */
  readonly by: string | null;
}

/** A kit, with what it says. */
export interface Kit {
  /** `index.html` first, `kit.zip` last. */
  readonly files: readonly MadeFile[];
  readonly terms: readonly Terms[];
  readonly tested: readonly TestedRow[];
  readonly certificate: CertificateFigures | null;
  /** Names of photos that are still to be taken. */
  readonly missingPhotos: readonly string[];
}

/** Of what `make` makes, papers that the kit has in its own words or its own place. */
const REPLACED = ['bundle.zip', 'how-it-works.html', 'LICENCES.txt'];

function photoProblem({ file }: Photo): Problem {
  return {
    code: 'publish/not-a-photo',
    what: 'A photo is not the kind of picture that its name says.',
    where: `--photos, ${file}`,
    got: 'other content',
    allowed: 'JPEG, PNG or WebP, with the ending of its kind',
    fix: `Save ${file} as a picture again, or leave it out.`,
  };
}

/** Photos of the kit. @throws `publish/not-a-photo`, for all that are none */
function photoFiles(photos: readonly Photo[]): MadeFile[] {
  const [first, ...rest] = photos.filter((photo) => !isPhoto(photo)).map(photoProblem);
  if (first) throw new VanewrightError([first, ...rest]);
  return photos.map(({ file, bytes }) => ({ path: `photos/${file}`, content: bytes }));
}

function certificateFiles({ json, html, pdf }: GivenCertificate): MadeFile[] {
  return [
    { path: 'certificate/certificate.html', content: html },
    { path: 'certificate/certificate.pdf', content: pdf },
    { path: 'certificate/certificate.json', content: json },
  ];
}

/** What a maker adds to the files of a design. */
export type Additions = Pick<KitRequest, 'certificate' | 'photos' | 'licences' | 'by'>;

/**
 * Refuses what does not fit a kit, before anything is made.
 *
 * @throws `publish/two-licences`, `publish/not-a-photo`, `publish/bad-certificate`, `publish/other-build`
 * @check test/journeys/publish.test.ts
 */
export function checkAdditions(
  instrument: Instrument,
  { certificate, photos, licences, by }: Additions,
): void {
  termsOf(licences, by);
  photoFiles(photos);
  if (certificate) certificateFigures(certificate, instrument);
}

function cautions({ design }: KitRequest): Markup {
  const boxes = cautionsFor(design.instrument).map(({ title, sentences }) =>
    element(
      'div',
      { class: 'caution' },
      element('h3', {}, title),
      ...sentences.map((text) => element('p', {}, text)),
    ),
  );
  return joined([element('div', { class: 'cautions' }, ...boxes), element('p', {}, CAUTIONS_DEFER)]);
}

/**
 * Everything that is needed to publish a build: one folder, one page, one zip.
 *
 * @param request - The proved design, what was made of it, and what the maker adds.
 * @returns Files; equal requests give equal bytes.
 * @throws `publish/two-licences`, `publish/not-a-photo`, `publish/bad-certificate`, `publish/other-build`
 * @check src/core/publish/publishKit.test.ts, test/journeys/publish.test.ts
 */
export function publishKit(request: KitRequest): Kit {
  const { design, by, made } = request;
  const terms = termsOf(request.licences, by);
  const certificate = request.certificate && certificateFigures(request.certificate, design.instrument);
  const tested = testedWith(design, certificate);
  const below = (file: MadeFile): MadeFile => ({ ...file, path: `files/${file.path}` });
  const files: MadeFile[] = [
    ...made.filter(({ path }) => path === 'how-it-works.html'),
    { path: 'LICENCES.txt', content: termsText(terms, by) },
    {
      path: 'tested-with.json',
      content: `${JSON.stringify({ name: design.instrument.name, by, tested }, null, 2)}\n`,
    },
    ...(request.certificate ? certificateFiles(request.certificate) : []),
    ...photoFiles(request.photos),
    ...request.sources.map(below),
    ...made.filter(({ path }) => !REPLACED.includes(path)).map(below),
  ];
  const page = kitPage({ design, by, certificate, tested, terms, files, cautions: cautions(request) });
  const all = [{ path: 'index.html', content: page }, ...files];
  const has = (name: string): boolean => request.photos.some(({ file }) => file.startsWith(`${name}.`));
  return {
    files: [...all, { ...bundleZip(all), path: 'kit.zip' }],
    terms,
    tested,
    certificate,
    missingPhotos: wantedPhotos.map(({ name }) => name).filter((name) => !has(name)),
  };
}
