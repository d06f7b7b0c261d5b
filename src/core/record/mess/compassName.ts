/** Languages of compass points that differ in their letters. */
export type CompassLanguage = 'english' | 'german' | 'romance';

const POINTS_16 = 'N NNE NE ENE E ESE SE SSE S SSW SW WSW W WNW NW NNW'.split(' ');
const letters = {
  english: (name: string) => name,
  // O is east (Ost).
  german: (name: string) => name.replaceAll('E', 'O'),
  // O is west (ouest, oeste, ovest), E stays.
  romance: (name: string) => name.replaceAll('W', 'O'),
} satisfies Record<CompassLanguage, (name: string) => string>;

const tables = Object.fromEntries(
  (Object.keys(letters) as CompassLanguage[]).map((language) => [
    language,
    new Map(POINTS_16.map((name, i) => [letters[language](name), i * 22.5])),
  ]),
) as Record<CompassLanguage, Map<string, number>>;

/**
 * Direction of the name of a compass point, one to three letters.
 *
 * @param text - `NNE`, in German `NNO`, in French, Spanish and Italian `SSO` for south-south-west.
 * @returns `null` when it is none in that language. [deg]
 * @source common practice, no source: sixteen points of 22.5 degrees
 * @check src/core/record/mess/compassName.test.ts
 */
export function compassHeading(text: string, language: CompassLanguage): number | null {
  return tables[language].get(text.toUpperCase()) ?? null;
}

/**
 * The language in which compass points are written.
 *
 * @param names - Those of a log.
 * @returns `open` when they hold an O and nothing tells whether it is east or west; `null` when some are no names.
 * @check src/core/record/mess/compassName.test.ts
 */
export function compassLanguage(names: Iterable<string>): CompassLanguage | 'open' | null {
  const all = new Set([...names].map((name) => name.toUpperCase()));
  const fits = (Object.keys(tables) as CompassLanguage[]).filter((language) =>
    [...all].every((name) => tables[language].has(name)),
  );
  const hasO = [...all].some((name) => name.includes('O'));
  if (fits.length === 0) return null;
  if (!hasO) return 'english';
  const told = fits.filter((language) => language !== 'english');
  return told.length === 1 ? told[0]! : 'open';
}
