import type { Problem } from '../../error/index.ts';
import type { DiscSpec } from '../discSpec.ts';

/** Largest disc the tool plans; no other length of a disc may be longer. [mm] @source common practice, no source. */
export const LARGEST_DISC_MM = 600;

/** What a length may be: what must be there, what may be 0, what may go either way. */
type Kind = 'positive' | 'not-negative' | 'signed' | 'travel';

/** Longest travel of a strip. [mm] @source common practice, no source: the longest sheet a workshop cutter takes. */
const LONGEST_TRAVEL_MM = 5000;

type Length = readonly [field: string, value: number, kind: Kind];

function formLengths({ form, strip }: DiscSpec): Length[] {
  return [
    ...(form?.kind === 'relief' ? [['disc.form.floorMm', form.floorMm, 'positive'] as const] : []),
    ...(form?.kind === 'inlay' ? [['disc.form.depthMm', form.depthMm, 'positive'] as const] : []),
    ...(strip
      ? ([
          ['disc.strip.turnLengthMm', strip.turnLengthMm, 'travel'],
          ['disc.strip.leadMm', strip.leadMm, 'not-negative'],
        ] as const)
      : []),
  ];
}

function lengthsOf(spec: DiscSpec): Length[] {
  const { bore, notch, process } = spec;
  return [
    ['disc.diameterMm', spec.diameterMm, 'positive'],
    ['disc.bore.diameterMm', bore.diameterMm, 'positive'],
    ...(bore.shape === 'd' ? [['disc.bore.acrossFlatMm', bore.acrossFlatMm, 'positive'] as const] : []),
    ['disc.hubDiameterMm', spec.hubDiameterMm, 'positive'],
    ['disc.thicknessMm', spec.thicknessMm, 'positive'],
    ...formLengths(spec),
    ['disc.webMm', spec.webMm, 'not-negative'],
    ['disc.rimMm', spec.rimMm, 'not-negative'],
    ['disc.notch.widthMm', notch.widthMm, 'not-negative'],
    ['disc.notch.depthMm', notch.depthMm, 'not-negative'],
    ['disc.process.minWindowMm', process.minWindowMm, 'positive'],
    ['disc.process.minLandMm', process.minLandMm, 'positive'],
    ['disc.process.minWebMm', process.minWebMm, 'not-negative'],
    ['disc.process.windowGrowthMm', process.windowGrowthMm, 'signed'],
  ];
}

const allowedText: Record<Kind, string> = {
  positive: `above 0 and up to ${LARGEST_DISC_MM} mm`,
  'not-negative': `0 to ${LARGEST_DISC_MM} mm`,
  signed: `-${LARGEST_DISC_MM} to ${LARGEST_DISC_MM} mm`,
  travel: `above 0 and up to ${LONGEST_TRAVEL_MM} mm`,
};

function isUsable(value: number, kind: Kind): boolean {
  const most = kind === 'travel' ? LONGEST_TRAVEL_MM : LARGEST_DISC_MM;
  if (!Number.isFinite(value) || Math.abs(value) > most) return false;
  return kind === 'signed' || (kind === 'not-negative' ? value >= 0 : value > 0);
}

/**
 * Lengths that are no lengths: not a number, below 0, or longer than any disc.
 *
 * @param spec - The disc as asked for. [mm]
 * @returns One `disc/size-not-usable` a field, n ≥ 0.
 */
export function unusableSizes(spec: DiscSpec): Problem[] {
  return lengthsOf(spec)
    .filter(([, value, kind]) => !isUsable(value, kind))
    .map(([field, value, kind]) => ({
      code: 'disc/size-not-usable',
      what: 'A length of the disc cannot be used.',
      where: field,
      got: `${value} mm`,
      allowed: allowedText[kind],
      fix: `Set ${field} to its size in millimetres${kind === 'not-negative' ? ', or to 0 for none' : ''}.`,
    }));
}
