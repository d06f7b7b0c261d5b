import type { HeadPlan } from '../../head/index.ts';
import { drawnOf } from '../../disc/index.ts';
import { showMm, showNumber } from '../../units/index.ts';
import { blankDocument, type SheetSetting } from './blankDocument.ts';
import { drawDimensions, drawingScale, scaleText } from './dimensionSheet.ts';
import { drawExploded } from './exploded.ts';
import { drawFooter, type TitleBlock } from './footer.ts';
import { papers } from './paper.ts';
import type { SheetPage } from './pdfPage.ts';
import { drawTile, trueSizeTiling } from './trueSize.ts';

/** What the sheets show. */
export interface SheetSubject {
  readonly name: string;
  readonly head: HeadPlan;
}

interface Sheet {
  readonly title: string;
  readonly scale: string;
  draw(page: SheetPage): void;
}

function sheetsOf({ head }: SheetSubject, { paper: name }: SheetSetting): Sheet[] {
  const { disc } = head;
  const paper = papers[name];
  const what = disc.strip ? 'coded strip' : 'coded disc';
  const { tiles, rows, columns } = trueSizeTiling(disc, paper);
  const { scale } = drawnOf(disc.spec);
  const trueScale = scale === 1 ? '1:1' : `1:1 after a print at ${showNumber(100 / scale, 2)} %`;
  return [
    ...tiles.map((tile) => ({
      title: `${what} at true size${tiles.length > 1 ? `, ${rows} by ${columns} sheets` : ''}`,
      scale: trueScale,
      draw: (page: SheetPage) => drawTile(page, disc, paper, tile, tiles.length === 1),
    })),
    {
      title: `${what} with dimensions`,
      scale: scaleText(drawingScale(disc, paper)),
      draw: (page: SheetPage) => drawDimensions(page, disc, paper),
    },
    { title: 'exploded view', scale: 'none', draw: (page: SheetPage) => drawExploded(page, head, paper) },
  ];
}

/**
 * Drawing sheets: the disc at true size, spread over several where one is too small, then its dimensions and how the
 * parts go together. Every sheet has a ruler, a bar to measure and a title block.
 *
 * @param subject - The instrument's name and its planned head.
 * @param setting - Paper and font.
 * @returns The whole file; equal designs give equal bytes.
 * @check test/journeys/discPdf.test.ts (pdftoppm at 300 dpi: length of the bar, pattern decoded all round)
 */
export async function discPdf(subject: SheetSubject, setting: SheetSetting): Promise<Uint8Array> {
  const paper = papers[setting.paper];
  const document = await blankDocument(`${subject.name}: drawing sheets`, setting);
  const { process, thicknessMm } = subject.head.disc.spec;
  const sheets = sheetsOf(subject, setting);
  for (const [index, { title, scale, draw }] of sheets.entries()) {
    const page = document.addPage();
    const block: TitleBlock = {
      name: subject.name,
      title,
      scale,
      material: `${process.kind}, ${showMm(thicknessMm)} thick`,
      tolerance: `edges ±${showMm(2 * process.edgeSdMm)}, lengths in mm`,
      sheet: `${index + 1} of ${sheets.length}`,
    };
    draw(page);
    drawFooter(page, paper, block);
  }
  return document.save();
}
