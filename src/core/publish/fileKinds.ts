import type { FileKind } from '../make/index.ts';

/** What a file of the kit is for, in words. */
export interface KindOfFile {
  readonly kind: FileKind;
  readonly purpose: string;
}

/** First match counts. */
const rules: readonly (readonly [RegExp, FileKind, string])[] = [
  [/^how-it-works[.]html$/, 'texts', 'how the disc works, turning; works offline'],
  [/^certificate[/]/, 'data', 'what was measured of the finished build'],
  [/^photos[/]/, 'texts', 'photo'],
  [/^tested-with[.]json$/, 'data', 'what it was tried with, and what came out'],
  [/^LICENCES[.]txt$/, 'texts', 'what you may do with the files'],
  [
    /^files[/]instrument[.]yaml$|[.]words[.]csv$/,
    'drawings',
    'the instrument file: change a number and make your own',
  ],
  [/^files[/]program[/]/, 'program', 'program for the controller'],
  [/^files[/]coupon[/]/, 'drawings', 'make this first and measure it'],
  [/^files[/]prints[/]/, 'drawings', 'printed part'],
  [/^files[/]disc[.]/, 'drawings', 'the disc, to cut or print'],
  [/^files[/]disc/, 'drawings', 'the disc, to cut or print'],
  [/^files[/]wiring[/]/, 'drawings', 'wiring'],
  [/^files[/](code[.]|proof)/, 'data', 'table for other programs'],
  [/^files[/]build-sheet/, 'texts', 'build sheet: begin here'],
  [/^files[/]parts[.]csv/, 'texts', 'parts to buy'],
  [/^files[/]CAUTIONS/, 'texts', 'read before you build'],
];

/** What a file of the kit is. */
export function kindOfFile(path: string): KindOfFile {
  const rule = rules.find(([pattern]) => pattern.test(path));
  return rule ? { kind: rule[1], purpose: rule[2] } : { kind: 'texts', purpose: 'list' };
}
