import type { Design } from '../../app/api.ts';
import { codePicture, discPicture, signalPicture, wordMap } from '../../core/make/index.ts';

/** Pictures that a page may ask for. */
export type PictureName = 'disc' | 'signals' | 'words' | 'code';

/** A picture as SVG, drawn by the code that draws it for the sheet. */
export function pictureOf({ head, code, disc }: Design, name: PictureName): string {
  if (name === 'disc') return discPicture(head).html;
  if (name === 'signals') return signalPicture(head).html;
  return (name === 'words' ? wordMap(code, disc.spec.windowLevel) : codePicture(code)).html;
}
