import type { SampleFlag } from '../../../core/record/index.ts';

/** What each flag of a reading means, in plain words. */
export const flagWords: Readonly<Record<SampleFlag, string>> = {
  impossibleJump: 'turned further between two reads than the shaft can turn',
  illegalBefore: 'a word that is not in the code table came before it',
  illegalWord: 'its word is not in the code table, so it has no heading',
  interpolated: 'a channel stands on an edge, so the heading is finer than a step',
  stuckChannel: 'a channel that should have changed has not',
  allDark: 'every channel dark since the start',
  allLight: 'every channel lit since the start',
  daylight: 'daylight drowns a channel',
  turnRecording: 'part of a recorded turn',
  absurdSpeed: 'faster than wind can be there',
  timeGuessed: 'its time was guessed from its neighbours',
  layoutGuessed: 'the layout of its log was guessed',
};
