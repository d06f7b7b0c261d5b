import type { SheetSetting } from './blankDocument.ts';
import type { SheetSubject } from './discPdf.ts';
import type { FiguresPage } from './figuresPdf.ts';

// The packages behind a PDF take a third of a second to load, which every command would pay: they come when a sheet is drawn.

/** Drawing sheets of a disc as `discPdf` makes them, loaded when they are wanted. */
export async function discPdf(subject: SheetSubject, setting: SheetSetting): Promise<Uint8Array> {
  return (await import('./discPdf.ts')).discPdf(subject, setting);
}

/** Pages of figures as `figuresPdf` makes them, loaded when they are wanted. */
export async function figuresPdf(
  first: FiguresPage,
  setting: SheetSetting,
  more: readonly FiguresPage[] = [],
): Promise<Uint8Array> {
  return (await import('./figuresPdf.ts')).figuresPdf(first, setting, more);
}
