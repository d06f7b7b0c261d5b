import sansUrl from 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf?url';
import type { Fonts } from '../../ports/index.ts';

/** The font of drawing sheets, fetched beside the page when a sheet is drawn. */
export const browserFonts: Fonts = {
  async sans() {
    const answer = await fetch(sansUrl);
    if (!answer.ok) throw new Error(`The font ${sansUrl} could not be fetched: ${answer.status}.`);
    return new Uint8Array(await answer.arrayBuffer());
  },
};
