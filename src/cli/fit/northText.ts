import type { FittedNorth } from '../../app/api.ts';
import { showDegrees, showNumber } from '../../core/units/index.ts';
import { part } from '../textParts.ts';

const round = (deg: number): string => showDegrees(Number(deg.toFixed(1)));

const ways = {
  bearing: 'by a bearing you know',
  landmark: 'by a landmark',
  sun: 'by the sun',
  compass: 'by magnetic compass',
} as const satisfies Record<FittedNorth['by'], string>;

function declinationLine({ declination }: FittedNorth): string[] {
  if (!declination) return [];
  const { declinationDeg, sigmaDeg, horizontalNt } = declination;
  const side = declinationDeg < 0 ? 'west' : 'east';
  return [
    `  declination      ${round(Math.abs(declinationDeg))} ${side} ± ${round(sigmaDeg)}, the needle turned by ${showNumber(horizontalNt, 0)} nT`,
  ];
}

/** What `fit north` prints: the one instruction, how sure it is, and what to beware of. */
export function northText(north: FittedNorth, path: string): string {
  const { name, by, bearing, advice, history, isWritten, written } = north;
  return [
    `${name}: north ${ways[by]}`,
    `  bearing          ${round(bearing.bearingDeg)} ± ${round(bearing.sigmaDeg)} from true north, one standard error`,
    ...declinationLine(north),
    '',
    advice.instruction,
    ...part(
      'Take care',
      advice.cautions.map((caution) => `- ${caution}`),
    ),
    ...part(
      'Settings of north',
      history.map(
        ({ since, offsetDeg, sigmaDeg, by: how }) =>
          `- since ${since}: ${showDegrees(offsetDeg)} ± ${round(sigmaDeg)}, ${how}`,
      ),
    ),
    '',
    isWritten
      ? `Wrote site.northOffsetDeg and its day to ${path}. Make the program again, so that it uses it.`
      : advice.entry
        ? 'Nothing was written to the file; --write does.'
        : 'Nothing was written to the file; with --shows-deg, for what the display shows now, --write does.',
    ...(written ? [`Wrote ${written.paths.join(', ')}.`] : []),
  ].join('\n');
}

/** The same as data; the picture is in its own file. */
export function northDocument(north: FittedNorth): Record<string, unknown> {
  const { name, by, bearing, declination, advice, history, isWritten, written } = north;
  return {
    command: 'fit north',
    ok: true,
    name,
    by,
    bearingDeg: bearing.bearingDeg,
    sigmaDeg: bearing.sigmaDeg,
    target: bearing.target,
    declination,
    showDeg: advice.showDeg,
    instruction: advice.instruction,
    cautions: advice.cautions,
    entry: advice.entry,
    history,
    isWritten,
    files: written?.paths ?? [],
  };
}
