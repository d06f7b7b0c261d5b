import { element, joined, look, table, type Markup } from '../../report/index.ts';
import type { Fit } from '../fit.ts';
import { signalsPicture } from '../pictures/signals.ts';
import { widthDial } from '../pictures/widthDial.ts';
import { wordStrip } from '../pictures/wordStrip.ts';
import type { Certificate } from './certificate.ts';

const STYLE = `
@page { size: A4; margin: 10mm }
body { font: 12px/1.3 ${look.font}; color: ${look.ink}; background: ${look.light}; max-width: 190mm; margin: 0 auto; padding: 8px }
h1 { font-size: 19px; margin: 0 } h2 { font-size: 13px; margin: 8px 0 2px } p { margin: 3px 0 }
.verdict { font-size: 14px; font-weight: bold; border-left: 4px solid ${look.accent}; padding-left: 8px }
table { border-collapse: collapse; width: 100% } th, td { text-align: left; vertical-align: top; border-bottom: 1px solid ${look.line}; padding: 1px 6px 1px 0 }
.pictures { display: grid; grid-template-columns: 1fr 2fr; gap: 6px; align-items: start } .pictures figure { margin: 0 } .pictures svg { width: 100%; height: auto; display: block }
.pictures figure:first-child:nth-last-child(3) { grid-row: span 2 } .pictures figure:only-child { grid-column: span 2 }
@media (max-width: 600px) { .pictures { display: block } }
@media print { body { font-size: 8.4px; padding: 0; background: none } h1 { font-size: 14px } h2 { font-size: 10px } .verdict { font-size: 11px } .pictures { grid-template-columns: 1fr 2.6fr } .pictures svg { max-height: 62mm } }
`;

const passText = (passes: boolean | null): string => (passes === null ? '' : passes ? 'pass' : 'FAIL');

function changesSection({ changes }: Certificate): Markup[] {
  if (!changes) return [];
  const rows = changes.map(({ where, before, now, matters }) => [
    where,
    before,
    now,
    matters ? 'look at it' : '',
  ]);
  return [
    element('h2', {}, 'Since the certificate before'),
    rows.length > 0
      ? table(['where', 'before', 'now', ''], rows)
      : element('p', {}, 'Nothing has changed that can be told.'),
  ];
}

function causesSection({ causes, unknowns }: Fit): Markup[] {
  const rows = causes.map(({ title, evidence, instruction }) => [title, evidence, instruction]);
  return [
    ...(rows.length > 0
      ? [element('h2', {}, 'What was found'), table(['what', 'evidence', 'what to do'], rows)]
      : []),
    ...(unknowns.length > 0
      ? [
          element('h2', {}, 'What this recording cannot tell'),
          table(
            ['what', 'why', 'record next'],
            unknowns.map(({ what, why, recordNext }) => [what, why, recordNext]),
          ),
        ]
      : []),
  ];
}

/**
 * The bench certificate as one page of HTML that prints on one sheet.
 *
 * @param certificate - As `certificateOf` gives it.
 * @param fit - What it certifies; for the pictures and the causes.
 */
export function certificatePage(certificate: Certificate, fit: Fit): string {
  const { name, recordedAt, tableHash, files, samples, repairs, passes, reasons, rows } = certificate;
  const figures = [
    ...(fit.disc ? [widthDial(fit.disc), wordStrip(fit.disc, fit.channels)] : []),
    signalsPicture(fit),
  ].map((one) => element('figure', {}, one));
  const body = joined([
    element('h1', {}, `Bench certificate: ${name}`),
    element(
      'p',
      {},
      `Recorded ${recordedAt}. Table ${tableHash ?? 'none'}. From ${files.join(', ')}: ${samples} samples, ${repairs} repairs listed.`,
    ),
    element(
      'p',
      { class: 'verdict' },
      passes
        ? 'PASS: read by its table, this build meets the need.'
        : 'FAIL: this build does not meet the need.',
    ),
    ...reasons.map((reason) => element('p', {}, reason)),
    element('div', { class: 'pictures' }, ...figures),
    element('h2', {}, 'Figures'),
    table(
      ['figure', 'found', 'needed', ''],
      rows.map((row) => [row.figure, row.found, row.needed ?? '', passText(row.passes)]),
    ),
    ...changesSection(certificate),
    ...causesSection(fit),
    element('p', {}, 'Kept with the instrument, it is what next year’s recording is compared with.'),
  ]);
  const head = element(
    'head',
    {},
    element('meta', { charset: 'utf-8' }),
    element('title', {}, `Bench certificate: ${name}`),
    {
      html: `<style>${STYLE}</style>`,
    },
  );
  return `<!doctype html>\n${element('html', { lang: 'en' }, head, element('body', {}, body)).html}\n`;
}
