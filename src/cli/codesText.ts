import type { CodeAdvice } from '../app/api.ts';
import type { RankedCode } from '../core/codes/index.ts';
import { showMm } from '../core/units/index.ts';

/** Codes told about in full; the rest is in `--json`. */
const TOLD = 4;

const verdictWords = {
  fits: 'fits',
  risky: 'at a risk',
  'does-not-fit': 'does not fit',
  cannot: 'cannot be made',
} as const satisfies Record<RankedCode['verdict'], string>;

function aboutCode({ title, name, verdict, measures, reasons }: RankedCode): string[] {
  const figures = measures
    ? `: ${measures.channels} sensors on ${measures.tracks} ${measures.tracks === 1 ? 'track' : 'tracks'}, smallest mark ${showMm(Number(measures.smallestMarkMm.toFixed(2)))}`
    : '';
  const why = reasons.slice(0, 3).map(({ isGood, text }) => `  ${isGood ? '+' : '-'} ${text}`);
  return [`${title} (${name}) ${verdictWords[verdict]}${figures}`, ...why];
}

/** The best codes for the need with their reasons, and the roses the positions fill fairly. */
export function codesText({ codes, roses }: CodeAdvice): string[] {
  const possible = codes.filter(({ verdict }) => verdict !== 'cannot');
  const fair = roses.filter(({ isFair }) => isFair);
  return [
    'Codes for this need, best first (set disc.code to choose another)',
    ...possible.slice(0, TOLD).flatMap((code) => aboutCode(code).map((line) => `  ${line}`)),
    '',
    'Wind roses these positions fill fairly',
    ...(fair.length === 0
      ? ['  none of the usual ones: share each position among the sectors it overlaps']
      : []),
    ...fair.map(({ sectors, advice }) => `  ${sectors} sectors: ${advice}`),
  ];
}

/** The same advice as data; tables are left out, since `disc.code` rebuilds them. */
export function codesDocument({ codes, roses }: CodeAdvice): Record<string, unknown> {
  return { codes: codes.map(({ table: _, ...code }) => code), roses };
}
