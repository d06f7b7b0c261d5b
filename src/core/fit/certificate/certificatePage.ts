import { element, joined, look, table, type Markup } from '../../report/index.ts';
import type { Fit } from '../fit.ts';
import { signalsPicture } from '../pictures/signals.ts';
import { widthDial } from '../pictures/widthDial.ts';
import { wordStrip } from '../pictures/wordStrip.ts';
import type { Certificate } from './certificate.ts';
import {
  certificateOrigin,
  certificateTables,
  certificateVerdict,
  NOTHING_CHANGED,
  type CertificateTable,
} from './certificateTables.ts';

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

/** A table under its title. */
function titled({ title, headings, rows }: CertificateTable): Markup[] {
  return [element('h2', {}, title), table(headings, rows)];
}

/** What has changed, or that nothing has; nothing at all for a first certificate. */
function changesSection(changes: CertificateTable | null): Markup[] {
  if (!changes) return [];
  if (changes.rows.length > 0) return titled(changes);
  return [element('h2', {}, changes.title), element('p', {}, NOTHING_CHANGED)];
}

/**
 * The bench certificate as one page of HTML that prints on one sheet.
 *
 * @param certificate - As `certificateOf` gives it.
 * @param fit - What it certifies; for the pictures and the causes.
 */
export function certificatePage(certificate: Certificate, fit: Fit): string {
  const { name, reasons } = certificate;
  const { figures: found, changes, causes, unknowns } = certificateTables(certificate, fit);
  const figures = [
    ...(fit.disc ? [widthDial(fit.disc), wordStrip(fit.disc, fit.channels)] : []),
    signalsPicture(fit),
  ].map((one) => element('figure', {}, one));
  const body = joined([
    element('h1', {}, `Bench certificate: ${name}`),
    element('p', {}, certificateOrigin(certificate)),
    element('p', { class: 'verdict' }, certificateVerdict(certificate)),
    ...reasons.map((reason) => element('p', {}, reason)),
    element('div', { class: 'pictures' }, ...figures),
    ...titled(found),
    ...changesSection(changes),
    ...[causes, unknowns].filter(({ rows }) => rows.length > 0).flatMap(titled),
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
