/** What a file is, as far as licences go. */
export type FileKind = 'drawings' | 'program' | 'texts' | 'data';

/** A licence in plain words. */
export interface Licence {
  readonly name: string;
  /** Its name in the list that machines read. */
  readonly spdx: string;
  readonly others: string;
  readonly suits: string;
  /** Kinds of file that it is written for. */
  readonly kinds: readonly FileKind[];
}

/** @source SPDX licence list; the plain words are ours and no legal advice. */
export const licences: readonly Licence[] = [
  {
    name: 'Creative Commons Zero',
    spdx: 'CC0-1.0',
    others: 'may do anything, without naming you',
    suits: 'you do not want to think about it again',
    kinds: ['drawings', 'texts', 'data'],
  },
  {
    name: 'Creative Commons Attribution',
    spdx: 'CC-BY-4.0',
    others: 'may do anything, also sell it, if they name you',
    suits: 'you want your name to stay on the drawing',
    kinds: ['drawings', 'texts', 'data'],
  },
  {
    name: 'Creative Commons Attribution, Share Alike',
    spdx: 'CC-BY-SA-4.0',
    others: 'may do anything if they name you and pass changes on under the same licence',
    suits: 'you want improvements of the drawing to stay open',
    kinds: ['drawings', 'texts', 'data'],
  },
  {
    name: 'CERN Open Hardware Licence, strongly reciprocal',
    spdx: 'CERN-OHL-S-2.0',
    others: 'may make and sell the thing if they pass on all drawings of it, changed ones too',
    suits: 'you want every instrument made from it to come with its drawings',
    kinds: ['drawings'],
  },
  {
    name: 'MIT License',
    spdx: 'MIT',
    others: 'may do anything with the program if they keep your name and the licence with it',
    suits: 'you want the program to be used everywhere',
    kinds: ['program'],
  },
  {
    name: 'Apache License 2.0',
    spdx: 'Apache-2.0',
    others: 'may do anything with the program if they keep your name and say what they changed',
    suits: 'you want that and a word about patents',
    kinds: ['program'],
  },
  {
    name: 'GNU General Public License, version 3 or later',
    spdx: 'GPL-3.0-or-later',
    others: 'may do anything with the program if they pass its source on under the same licence',
    suits: 'you want changed programs to stay open',
    kinds: ['program'],
  },
];

/** What a maker may do with the files, and how to tell others what they may do. */
export function licencesText(): string {
  const choices = licences.map(
    ({ name, spdx, others, suits, kinds }) =>
      `${spdx} (for ${kinds.join(', ')})\n  ${name}: others ${others}.\n  Choose it when ${suits}.`,
  );
  return `${[
    'Whose are these files?',
    'They are made from your instrument file and are yours. This tool claims no right in them and asks for no mention.',
    'How do I let others use them?',
    'Put one of these names into a file called LICENCE beside them. Nothing else is needed. Without such a file nobody else may copy them.',
    ...choices,
    'These are plain words, not legal advice. The text of the licence counts.',
  ].join('\n\n')}\n`;
}
