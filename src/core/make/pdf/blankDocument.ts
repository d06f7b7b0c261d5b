import fontkit from '@pdf-lib/fontkit';
import { PDFDocument } from 'pdf-lib';
import { papers, type PaperName } from './paper.ts';
import { PT_PER_MM, SheetPage } from './pdfPage.ts';

/** Moment written into every file, so that equal content gives equal bytes. */
const FIXED_TIME = new Date(Date.UTC(2000, 0, 1));

/** How sheets are made. */
export interface SheetSetting {
  readonly paper: PaperName;
  /** A TrueType font with Latin letters and the signs ⌀, ± and °. */
  readonly font: Uint8Array;
}

/** A document that pages are added to. */
export interface BlankDocument {
  addPage(): SheetPage;
  /** The whole file; equal pages give equal bytes. */
  save(): Promise<Uint8Array>;
}

/** A document without pages, its dates fixed. */
export async function blankDocument(title: string, setting: SheetSetting): Promise<BlankDocument> {
  const document = await PDFDocument.create({ updateMetadata: false });
  document.registerFontkit(fontkit);
  const font = await document.embedFont(setting.font, { subset: true });
  document.setTitle(title);
  document.setProducer('vanewright');
  document.setCreator('vanewright');
  document.setCreationDate(FIXED_TIME);
  document.setModificationDate(FIXED_TIME);
  const { widthMm, heightMm } = papers[setting.paper];
  return {
    addPage: () => new SheetPage(document.addPage([widthMm * PT_PER_MM, heightMm * PT_PER_MM]), font),
    save: () => document.save(),
  };
}
