import { bytesOf, discPicture, sheetStyle, type MadeFile } from '../make/index.ts';
import { partsList, schematicPicture } from '../program/index.ts';
import { element, joined, table, type Markup } from '../report/index.ts';
import { showDegrees, showNumber } from '../units/index.ts';
import { kindOfFile } from './fileKinds.ts';
import type { CertificateFigures } from './givenCertificate.ts';
import { wantedPhotos } from './photoList.ts';
import type { Terms } from './terms.ts';
import type { TestedDesign, TestedRow } from './testedWith.ts';

/** What the page lists. */
export interface KitPage {
  readonly design: TestedDesign;
  /** Who made it; `null` where that is not told. */
  readonly by: string | null;
  readonly certificate: CertificateFigures | null;
  readonly tested: readonly TestedRow[];
  readonly terms: readonly Terms[];
  /** Files of the kit, the page and the zip left out. */
  readonly files: readonly MadeFile[];
  readonly cautions: Markup;
}

const section = (title: string, ...children: readonly Markup[]): Markup =>
  element('section', {}, element('h2', {}, title), ...children);
const paragraph = (...children: readonly (Markup | string)[]): Markup => element('p', {}, ...children);
const scrolled = (name: string, content: Markup): Markup =>
  element('div', { class: 'scroll', tabindex: '0', role: 'region', 'aria-label': name }, content);

/** A path as an address: what is no plain letter is written by its number. */
function addressOf(path: string): string {
  return path.split('/').map(encodeURIComponent).join('/');
}
const link = (path: string, text = path): Markup => element('a', { href: addressOf(path) }, text);

function sizeText(file: MadeFile): string {
  const bytes = bytesOf(file).length;
  return bytes < 1024 ? `${bytes} B` : `${showNumber(bytes / 1024, bytes < 10_240 ? 1 : 0)} kB`;
}

function filesTable(files: readonly MadeFile[], terms: readonly Terms[]): Markup {
  const licenceOf = (kind: string): string =>
    terms.find((row) => row.kind === kind)?.licence?.spdx ?? 'none given';
  const rows = files.map((file) => {
    const { kind, purpose } = kindOfFile(file.path);
    return [link(file.path), purpose, sizeText(file), licenceOf(kind)];
  });
  return scrolled('Files', table(['file', 'what it is', 'size', 'licence'], rows));
}

function photos(files: readonly MadeFile[]): Markup {
  const taken = wantedPhotos.map((wanted) => ({
    ...wanted,
    path: files.find(({ path }) => path.startsWith(`photos/${wanted.name}.`))?.path ?? null,
  }));
  const shown = taken.flatMap(({ path, shows }) =>
    path === null
      ? []
      : [
          element(
            'figure',
            {},
            element('img', { src: addressOf(path), alt: shows, loading: 'lazy' }),
            element('figcaption', {}, shows),
          ),
        ],
  );
  const missing = taken.filter(({ path }) => path === null);
  return joined([
    ...shown,
    ...(missing.length === 0
      ? []
      : [
          paragraph('These are still to be taken; put each beside this page under its name.'),
          scrolled(
            'Photos to take',
            table(
              ['name', 'shows', 'how'],
              missing.map(({ name, shows, how }) => [`photos/${name}.jpg`, shows, how]),
            ),
          ),
        ]),
  ]);
}

function certificateSection({ certificate, design }: KitPage): Markup[] {
  if (!certificate) {
    const { asBuilt } = design.instrument;
    const says = asBuilt
      ? `This build was turned by hand on ${asBuilt.recordedAt} and is read by its own table, ${asBuilt.tableHash}. The certificate is not part of the kit.`
      : 'Nobody has turned a finished build by hand yet: every figure here is designed or proved, none is measured.';
    return [section('Certificate', paragraph(says))];
  }
  const rows = certificate.rows.map(({ figure, found, needed, passes }) => [
    figure,
    found,
    needed ?? '',
    passes === null ? '' : passes ? 'pass' : 'FAIL',
  ]);
  return [
    section(
      'Certificate',
      element(
        'p',
        { class: 'verdict' },
        certificate.passes ? 'PASS: this build meets the need.' : 'FAIL: this build does not meet the need.',
      ),
      paragraph(
        `Recorded ${certificate.recordedAt}, table ${certificate.tableHash ?? 'none'}. `,
        link('certificate/certificate.html', 'The whole certificate'),
        ', ',
        link('certificate/certificate.pdf', 'on paper'),
        '.',
      ),
      scrolled('Figures of the certificate', table(['figure', 'found', 'needed', 'result'], rows)),
    ),
  ];
}

function opening({ design, by }: KitPage): Markup {
  const { instrument, head } = design;
  const { code } = head.disc;
  return joined([
    element('h1', {}, instrument.name),
    paragraph(
      `A shaft whose bearing is read from a coded disc: ${code.positions} positions of ${showDegrees(360 / code.positions)}, ${head.channels.length} sensors, ${code.family}.${by ? ` Made by ${by}.` : ''}`,
    ),
    paragraph(
      link('kit.zip', 'Everything in one zip'),
      ' · ',
      link('how-it-works.html', 'How it works'),
      ' · ',
      link('files/build-sheet.html', 'Build sheet'),
    ),
    element('figure', {}, discPicture(head)),
  ]);
}

const STYLE = `${sheetStyle}
a { color: var(--accent); overflow-wrap: anywhere; } h1 { overflow-wrap: anywhere; } td { overflow-wrap: anywhere; }
figure img { max-width: 100%; height: auto; display: block; }
:focus-visible { outline: 3px solid var(--accent); outline-offset: 2px; }
`;

/** Whatever a name holds: nothing runs on this page, and nothing but its own files is asked for. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src 'self' file:";

/** The one page of a kit. */
export function kitPage(kit: KitPage): string {
  const { design, tested, terms, files } = kit;
  const { instrument, head } = design;
  const parts = partsList(instrument, head).map(({ quantity, part, value, note }) => [
    String(quantity),
    part,
    value,
    note,
  ]);
  const body = joined([
    opening(kit),
    section('Before you build', kit.cautions),
    section('Parts', scrolled('Parts', table(['how many', 'part', 'value', 'note'], parts))),
    section('Wiring', element('figure', { class: 'tall' }, schematicPicture(instrument, head))),
    section(
      'Tested with',
      scrolled(
        'Tested with',
        table(
          ['what', 'value', 'how it is known'],
          tested.map(({ what, value, by }) => [what, value, by]),
        ),
      ),
    ),
    ...certificateSection(kit),
    section('Photos', photos(files)),
    section(
      'What you may do with it',
      scrolled(
        'Licences',
        table(
          ['files', 'what others may do'],
          terms.map(({ files: what, says }) => [what, says]),
        ),
      ),
      paragraph('Plain words, not legal advice; the text of each licence counts.'),
    ),
    section('Files', filesTable(files, terms)),
  ]);
  const page = element(
    'html',
    { lang: 'en' },
    element(
      'head',
      {},
      { html: `<meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="${POLICY}">` },
      { html: '<meta name="viewport" content="width=device-width, initial-scale=1">' },
      element('title', {}, instrument.name),
      { html: `<style>${STYLE}</style>` },
    ),
    element('body', {}, element('main', {}, body)),
  );
  return `<!doctype html>\n${page.html}\n`;
}
