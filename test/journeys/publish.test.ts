import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFindings, openPage, startBrowser } from '../support/browser.ts';
import { filesIn, ownFolder, vanewright } from '../support/runCli.ts';
import { ROOT, textOf } from '../support/sourceFiles.ts';

const isDocument = new Ajv2020({ allowUnionTypes: true }).compile(
  JSON.parse(textOf('schema/output.schema.json')),
);
const BUILDS = ['--builds', '50'];
const photo = Buffer.from('ffd8ffe000104a464946', 'hex');

let own: ReturnType<typeof ownFolder>;
const at = (...path: string[]): string => join(own.path, ...path);
const file = (): string => at('instrument.yaml');
beforeAll(() => {
  own = ownFolder();
  cpSync(join(ROOT, 'examples/jetty/instrument.yaml'), file());
  mkdirSync(at('photos'));
  writeFileSync(at('photos/disc.jpg'), photo);
  const turn = join(ROOT, 'examples/jetty/turn-cw.csv');
  vanewright('fit', file(), turn, '--starts-at-deg', '0', '--write', '--out', at('fitted'));
  const words = ['--fit-folder', at('fitted'), '--photos', at('photos'), '--by', 'A. <b>Maker'];
  const licences = ['--licence', 'CERN-OHL-S-2.0', 'MIT'];
  published = vanewright('publish', file(), '--out', at('kit'), ...words, ...licences, ...BUILDS, '--json');
}, 60_000);
afterAll(() => own.end());
let published: ReturnType<typeof vanewright>;

describe('vanewright publish', () => {
  it('writes a kit with certificate, photos and licences, and one document', () => {
    expect([published.exit, published.err]).toEqual([0, '']);
    const document = JSON.parse(published.out);
    expect(isDocument(document) || isDocument.errors).toBe(true);
    expect(document).toMatchObject({ command: 'publish', ok: true, certificate: { passes: true } });
    expect(document.missingPhotos).not.toContain('disc');
    expect(filesIn(at('kit'))).toEqual([...document.files].sort());
    expect(document.files).toEqual(
      expect.arrayContaining([
        ...['index.html', 'how-it-works.html', 'kit.zip', 'certificate/certificate.pdf', 'photos/disc.jpg'],
        ...[
          'files/instrument.yaml',
          'files/build-sheet.html',
          'files/wiring/schematic.svg',
          'files/parts.csv',
        ],
      ]),
    );
    expect(readFileSync(at('kit/photos/disc.jpg'))).toEqual(photo);
    expect(readFileSync(at('kit/index.html'), 'utf8')).not.toContain('<b>Maker');
  });

  it('publishes the program that reads by the table of the turn', () => {
    const program = 'files/program/boathouse_jetty_vane/boathouse_jetty_vane.ino';
    expect(readFileSync(at('kit', program), 'utf8')).toBe(
      readFileSync(at('fitted', program.replace('files/', '')), 'utf8'),
    );
  });

  it('gives the same bytes when it is run again', () => {
    const again = ['--fit-folder', at('fitted'), '--photos', at('photos'), '--by', 'A. <b>Maker'];
    const licences = ['--licence', 'MIT', 'CERN-OHL-S-2.0'];
    vanewright('publish', file(), '--out', at('again'), ...again, ...licences, ...BUILDS);
    const sum = (kit: string) =>
      createHash('sha256')
        .update(readFileSync(at(kit, 'kit.zip')))
        .digest('hex');
    expect(sum('again')).toBe(sum('kit'));
  });

  it.each([
    [
      'publish/other-build',
      () => [join(ROOT, 'examples/dome/instrument.yaml'), '--fit-folder', at('fitted')],
    ],
    ['publish/no-photos', () => [file(), '--photos', at('fitted')]],
    ['publish/two-licences', () => [file(), '--licence', 'CC0-1.0', 'CC-BY-4.0']],
    ['files/not-found', () => [file(), '--fit-folder', at('nowhere')]],
  ] as const)('refuses %s and writes nothing', (code, words) => {
    const { exit, out } = vanewright('publish', ...words(), '--out', at('refused'), '--json', ...BUILDS);
    expect(exit).toBe(2);
    const document = JSON.parse(out);
    expect(isDocument(document) || isDocument.errors).toBe(true);
    expect(document.problems).toMatchObject([{ code }]);
    expect(existsSync(at('refused'))).toBe(false);
  });
});

describe('the page of a kit', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser.close());

  it.each([
    [1280, 'light'],
    [360, 'dark'],
  ] as const)('opens from a disk without a network, at %i pixels, %s', async (width, colorScheme) => {
    const url = pathToFileURL(at('kit/index.html')).href;
    const options = { viewport: { width, height: 800 }, colorScheme, offline: true, bypassCSP: true };
    const { page, complaints } = await openPage(browser, url, options);
    expect(await axeFindings(page)).toEqual([]);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
    await page.getByRole('link', { name: 'How it works' }).click();
    await page.getByText('Turn the disc', { exact: true }).waitFor();
    expect(complaints).toEqual([]);
  });
});
