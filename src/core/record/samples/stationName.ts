import { VanewrightError } from '../../error/index.ts';

const ALLOWED = /^[\p{L}\p{N}][\p{L}\p{N} ._-]{0,62}$/u;
const EDGE = /[ .]$/;

/**
 * A station name that can stand in any file name, page, query and sheet.
 *
 * @param text - As the maker or a topic gives it.
 * @throws `record/station-name` for anything else, such as a path, a formula or control characters.
 * @check src/core/record/samples/stationName.test.ts
 */
export function stationName(text: string): string {
  const name = text.normalize('NFC');
  if (ALLOWED.test(name) && !EDGE.test(name) && !name.includes('..')) return name;
  throw new VanewrightError({
    code: 'record/station-name',
    what: 'That cannot be the name of a station.',
    where: 'station',

    got:
      name.slice(0, 40).replace(/[\x00-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069\ud800-\udfff]/g, '\ufffd') ||
      'nothing',
    allowed:
      '1 to 63 letters, digits, spaces and . _ - with a letter or digit first, none of space or . last',
    fix: 'Use a plain name such as jetty-north.',
  });
}
