import {
  buildCode,
  codeProperties,
  families,
  lightFaultsSeen,
  sectorAdvice,
  type CodeTable,
} from '../../codes/index.ts';
import { showDegrees, showNumber } from '../../units/index.ts';
import { codePicture } from '../pictures/codePicture.ts';
import { aboutCodes, type AboutCode } from './aboutCodes.ts';

/** A page of the docs with the pictures it shows. */
export interface CodesPage {
  readonly page: string;
  /** Name without folder and ending, and the picture. */
  readonly pictures: readonly { readonly name: string; readonly svg: string }[];
}

function yesNo(is: boolean): string {
  return is ? 'yes' : 'no';
}

function factRows(table: CodeTable): (readonly [string, string])[] {
  const properties = codeProperties(table);
  const { lampOff, flooded } = lightFaultsSeen(properties, 1);
  const mostBusy = Math.max(...properties.tracks.map(({ transitions }) => transitions));
  return [
    ['positions', `${table.positions}, ${showDegrees(360 / table.positions)} each`],
    ['tracks, channels', `${table.tracks.length}, ${table.channels.length}`],
    ['one change at every boundary', table.absolute ? yesNo(properties.singleStep) : 'it counts'],
    [
      'shortest mark',
      `${showNumber(properties.shortestRunSteps, 2)} steps, ${showDegrees(properties.shortestRunDeg)}`,
    ],
    ['edges of the busiest track', String(mostBusy)],
    ['worst reading of a disc stopped on a boundary', `${properties.worstErrorPositions} positions out`],
    ['words that show a fault', String(properties.illegalWords)],
    ['a dead lamp, a flood of light are noticed', `${yesNo(lampOff)}, ${yesNo(flooded)}`],
    [
      'wind roses filled fairly',
      sectorAdvice(table.positions)
        .filter(({ isFair }) => isFair)
        .map(({ sectors }) => sectors)
        .join(', ') || 'none of the usual',
    ],
  ];
}

function section(about: AboutCode, table: CodeTable, title: string): string {
  const rows = factRows(table).map(([what, howMuch]) => `| ${what} | ${howMuch} |`);
  return [
    `## ${title}`,
    '',
    `\`disc.code: ${about.family}\``,
    '',
    about.words,
    '',
    `![${table.family} with ${table.positions} positions](pictures/codes/${about.family}.svg)`,
    '',
    '| | |',
    '|---|---|',
    ...rows,
    '',
  ].join('\n');
}

/** The page on codes and its pictures, every figure computed from the codes themselves. */
export function codesPage(): CodesPage {
  const shown = aboutCodes.map((about) => ({
    about,
    title: families.find(({ name }) => name === about.family)?.title ?? about.family,
    table: buildCode(about.family, about.positions, about.options),
  }));
  const head = [
    '# The codes a disc can carry',
    '',
    '<!-- Made by `npm run generate` from src/core/make/codesPage. Change that, not this page. -->',
    '',
    'Dark is land, light is a window, stripes are a third colour; numbered dots are the sensors. `vanewright prove FILE` ranks all of',
    'them for your own need, disc and process, with the reasons; `disc.code` chooses one. What is not possible is answered with why,',
    'and the nearest counts that are.',
    '',
  ].join('\n');
  return {
    page: `${head}\n${shown.map(({ about, table, title }) => section(about, table, title)).join('\n')}`,
    pictures: shown.map(({ about, table }) => ({ name: about.family, svg: `${codePicture(table).html}\n` })),
  };
}
