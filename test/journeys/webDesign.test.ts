import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { keeping, openPage, plainFiles, startBrowser } from '../support/browser.ts';
import { textOf } from '../support/sourceFiles.ts';
import { until } from '../support/until.ts';

let browser: Browser;
let files: Awaited<ReturnType<typeof plainFiles>>;
beforeAll(async () => {
  [browser, files] = await Promise.all([startBrowser(), plainFiles()]);
});
afterAll(async () => {
  await browser.close();
  await files.end();
});

const jetty = textOf('examples/jetty/instrument.yaml');

/** The workbench on a page, with the jetty vane in it unless another file is given. */
async function workbench(path: string, text: string | null = jetty) {
  const opened = await openPage(browser, 'about:blank');
  if (text !== null) {
    await opened.page.addInitScript({ content: keeping(text) });
  }
  // Few builds, as on a slow machine: the yield of this vane is plain with them.
  await opened.page.goto(`${files.url}?builds=200${path}`);
  return opened;
}

/** A text area, as far as this looks at it. */
interface Marked {
  readonly value: string;
  readonly selectionStart: number;
  readonly selectionEnd: number;
}

const dial = (page: Page) => page.getByRole('slider', { name: 'The disc on its shaft' });
const reading = (page: Page, name: string) => page.locator('.readings').first().locator(`.${name} dd`);
const numberOf = async (page: Page, name: string): Promise<number> =>
  Number.parseFloat((await reading(page, name).textContent())!);

/** The file as a maker would take it home. */
async function savedText(page: Page): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save file as' }).click(),
  ]);
  return readFileSync((await download.path())!, 'utf8');
}

describe('the design pages', () => {
  it('lead from a printer and five photoresistors to a proved design and its files, by mouse alone', async () => {
    const { page, complaints } = await workbench('', null);
    await page.getByLabel('What do you make discs with?').selectOption('fdm');
    await page.getByLabel('Which light sensors?').selectOption('photoresistor');
    await page.getByRole('button', { name: 'Make the first file' }).click();
    await page.getByText('Your first file is ready').waitFor();
    await page.getByRole('link', { name: 'Look at the disc' }).click();
    await page.getByText('32 positions of 11.25° on 5 tracks fit this disc.').waitFor();
    await page.getByText('Codes for this need, the best first').click();
    await page.getByRole('heading', { name: /Gray/ }).first().waitFor();
    await page.getByRole('link', { name: 'Next: Head' }).click();
    await page.getByText('Counts of every channel, unrolled').waitFor();
    await page.getByRole('link', { name: 'Next: Prove' }).click();
    await page.getByText('Yes, this design will read right.').waitFor();
    await page.getByText('worst item', { exact: true }).waitFor();
    expect(await savedText(page)).toContain('kind: photoresistor');
    await page.getByRole('link', { name: 'Next: Make' }).click();
    await page.getByRole('button', { name: 'Make all files' }).click();
    const zip = page.getByRole('button', { name: 'Save everything as one zip' });
    await zip.waitFor({ timeout: 60_000 });
    const [bundle] = await Promise.all([page.waitForEvent('download'), zip.click()]);
    const bytes = readFileSync(await bundle.path());
    expect(bytes.subarray(0, 2).toString()).toBe('PK');
    for (const name of ['disc.stl', 'disc.pdf', 'build-sheet.html']) expect(bytes.includes(name)).toBe(true);
    expect(complaints).toEqual([]);
  });

  it('turn the disc under the mouse, and show the misread that a moved sensor makes in natural binary', async () => {
    // Quick sensors, so that nothing is late.
    const quick = jetty.replace(/detector:[\s\S]*?(?= {2}light:)/, 'detector: { kind: phototransistor }\n');
    const { page, complaints } = await workbench('#/disc', quick);
    await dial(page).waitFor();
    const box = (await dial(page).boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y - box.height * 0.3);
    await page.mouse.down();
    await page.mouse.move(x + box.width * 0.3, y, { steps: 12 });
    await page.mouse.up();
    // A quarter turn clockwise brings the disc angle 270 under the head.
    await until('the disc has followed', async () => Math.abs((await numberOf(page, 'angle')) - 270) < 2);
    await page.getByRole('button', { name: 'Compare with another code' }).click();
    await page.getByRole('slider', { name: 'The same need as a disc in natural-binary' }).waitFor();
    await page.getByLabel('Move its sensor along the track').fill('1.5');
    await dial(page).press('Home');
    await page.getByRole('button', { name: 'Let it turn' }).click();
    // Not a whole part of a turn in each frame of a screen, so that every angle comes by.
    await page.getByLabel('How fast it turns').fill('700');
    const other = page.locator('.compared .readings .worst dd');
    await until(
      'binary has misread by half a turn or so',
      async () => Number.parseFloat((await other.textContent())!) > 90,
    );
    expect(await numberOf(page, 'worst')).toBeLessThan(45);
    expect(complaints).toEqual([]);
  });

  it('are walked by keys alone', async () => {
    const { page, complaints } = await workbench('#/disc');
    await dial(page).focus();
    await page.keyboard.press('PageUp');
    await page.keyboard.press('ArrowRight');
    await until('the disc has turned by 16 degrees', async () => (await numberOf(page, 'angle')) === 16);
    expect(await dial(page).getAttribute('aria-valuetext')).toContain('Disc angle 16°');
    const diameter = page.getByLabel('Disc diameter', { exact: true });
    await diameter.focus();
    await page.keyboard.press('ArrowUp');
    await until('the arrow has stepped the diameter', async () => (await diameter.inputValue()) === '90.1');
    await page.getByRole('link', { name: 'Next: Head' }).press('Enter');
    const sensor = page.getByRole('combobox', { name: 'Sensor', exact: true });
    await sensor.focus();
    await page.keyboard.press('ArrowDown');
    await page.getByLabel('Current, window open').waitFor();
    await page.getByRole('link', { name: 'Next: Prove' }).press('Enter');
    await page.getByText('Yes, this design will read right.').waitFor();
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    expect(await savedText(page)).toBe(jetty);
    await page.keyboard.press('Control+y');
    await until('the diameter is back', async () => (await savedText(page)).includes('diameterMm: 90.1'));
    expect(complaints).toEqual([]);
  });

  it('show range and reason while one types, and keep what cannot be out of the file', async () => {
    const { page } = await workbench('#/disc');
    const diameter = page.getByLabel('Disc diameter', { exact: true });
    await diameter.fill('4');
    await page.getByRole('alert').getByText('Allowed: 16 to 600 mm.').waitFor();
    await diameter.fill('wide');
    await page.getByRole('alert').getByText('“wide” is not a number.').waitFor();
    expect(await savedText(page)).toBe(jetty);
    await diameter.fill('34');
    await page.getByText(/stands? in the way/).waitFor();
    expect(await savedText(page)).toContain('diameterMm: 34');
    await diameter.blur();
    expect(await diameter.inputValue()).toBe('34');
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText(/positions of 11.25° on 5 tracks fit/).waitFor();
    expect(await diameter.inputValue()).toBe('90');
  });

  it('write a whole group when its kind changes, and the form along with the process', async () => {
    const { page } = await workbench('#/disc');
    await page.getByLabel('Shape of the hole').selectOption('hex');
    await page.getByLabel('Made by').selectOption('film');
    await until(
      'the disc is an overlay',
      async () => (await page.getByLabel('Made as').inputValue()) === 'overlay',
    );
    const text = await savedText(page);
    expect(text).toContain('{ shape: hex, diameterMm: 5 }');
    expect(text).toContain('# An invented instrument');
    await page.getByText(/tracks fit this disc/).waitFor();
  });

  it('keep a file of own words with the project, and never in the place of another of that name', async () => {
    const { page } = await workbench('#/disc');
    await page.getByText(/tracks fit this disc/).waitFor();
    const choose = (content: string) =>
      page.getByLabel('Choose a file of words').setInputFiles({
        name: 'words.csv',
        mimeType: 'text/csv',
        buffer: Buffer.from(content),
      });
    await choose('first');
    await page.getByText('words.csv is in the project.').waitFor();
    await choose('second');
    await page.getByText('words-2.csv is in the project.').waitFor();
    await page.reload();
    await page.getByText('words.csv is in the project.', { exact: true }).waitFor();
    await page.getByText('words-2.csv is in the project.').waitFor();
    const kept = await page.evaluate<string>("localStorage.getItem('vanewright:beside')");
    expect(JSON.parse(kept)).toEqual({ 'words.csv': 'first', 'words-2.csv': 'second' });
  });

  it('open a broken file with its errors at their lines, to be mended there', async () => {
    const broken = jetty
      .replace('diameterMm: 90', 'diametreMm: 90')
      .replace('positions: 32', 'positions: -3');
    const { page, complaints } = await workbench('#/file', broken);
    const line = broken.split('\n').findIndex((text) => text.includes('diametreMm')) + 1;
    await page
      .getByRole('button', { name: `Go to line ${line}` })
      .first()
      .click();
    const area = page.getByLabel('The instrument file', { exact: true });
    const marked = await area.evaluate((element) => {
      const { value, selectionStart, selectionEnd } = element as unknown as Marked;
      return value.slice(selectionStart, selectionEnd);
    });
    expect(marked).toContain('diametreMm');
    await area.fill(jetty);
    await page.getByText('The file reads well, and the design can be made.').waitFor();
    expect(complaints).toEqual([]);
  });
});

describe('the proof', () => {
  it('follows a slider, proposes changes with what they do, and writes one into the file', async () => {
    const { page, complaints } = await workbench(
      '#/prove',
      jetty.replace('reflected-gray', 'natural-binary'),
    );
    await page.getByText('No, this design will not read right as it is.').waitFor();
    await page.getByRole('button', { name: 'Apply: Change one channel a step' }).click();
    await page.getByText('Yes, this design will read right.').waitFor();
    expect(await savedText(page)).toContain('code: reflected-gray');
    await page.getByLabel('Its value').fill('1');
    await page.getByText('No, this design will not read right as it is.').waitFor();
    expect(await page.locator('.budget [data-worst] .what').textContent()).toContain('Bore off the middle');
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByLabel('Or take an example').selectOption('sluice');
    await page.getByRole('columnheader', { name: 'mill sluice dial' }).waitFor();
    expect(complaints).toEqual([]);
  });
});
