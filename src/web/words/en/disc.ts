/** Words of the page that chooses and draws the disc. */
export const disc = {
  title: 'The disc',
  turnHint: 'Drag the disc, roll the wheel over it, or use the arrow keys.',
  dialName: 'The disc on its shaft',
  dialText: (angle: string, word: string, heading: string) =>
    `Disc angle ${angle}, word ${word}, heading ${heading}`,
  angle: 'Disc angle',
  word: 'Word',
  heading: 'Heading',
  none: 'none',
  spin: 'Let it turn',
  stop: 'Stop',
  channel: (index: number) => `Channel ${index}`,
  lit: 'light',
  dark: 'dark',
  says: (positions: number, step: string, tracks: number) =>
    `${positions} positions of ${step} on ${tracks} ${tracks === 1 ? 'track' : 'tracks'} fit this disc.`,
  saysNo: 'This disc cannot be made or read yet. Mend what stands at the top.',
  what: 'What it must tell apart',
  size: 'Its size',
  process: 'How it is made',
};
