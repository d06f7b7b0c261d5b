import type { Markup } from '../../report/index.ts';
import type { Cause } from '../causes/cause.ts';
import type { Fit } from '../fit.ts';
import { signalsPicture } from './signals.ts';
import { widthDial } from './widthDial.ts';
import { wordStrip } from './wordStrip.ts';

/** The picture that belongs to a cause; signals where the disc could not be followed. */
export function causePicture(fit: Fit, cause: Cause): Markup {
  if (fit.disc && cause.picture === 'widths') return widthDial(fit.disc);
  if (fit.disc && cause.picture === 'words') return wordStrip(fit.disc, fit.channels, cause.channels);
  return signalsPicture(fit, cause.channels);
}
