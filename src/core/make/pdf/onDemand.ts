import type { SheetSetting } from './blankDocument.ts';
import type { SheetSubject } from './discPdf.ts';
import type { FiguresPage } from './figuresPdf.ts';

// The packages behind a PDF take a third of a second to load, which every command would pay: they come when a sheet is drawn.

/** Drawing sheets of a disc as `discPdf` makes them, loaded when they are wanted. */
export async function discPdf(subject: SheetSubject, setting: SheetSetting): Promise<Uint8Array> {
  return (await import('./discPdf.ts')).discPdf(subject, setting);
}

/** One page of figures as `figuresPdf` makes it, loaded when it is wanted. */
export async function figuresPdf(content: FiguresPage, setting: SheetSetting): Promise<Uint8Array> {
  return (await import('./figuresPdf.ts')).figuresPdf(content, setting);
}
