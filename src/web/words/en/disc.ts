/** Words of the page that chooses and draws the disc. */
export const disc = {
  title: 'The disc',
  turnHint: 'Drag the disc, roll the wheel over it, or use the arrow keys.',
  dialName: 'The disc on its shaft',
  otherDial: (code: string) => `The same need as a disc in ${code}`,
  dialText: (angle: string, word: string, heading: string) =>
    `Disc angle ${angle}, word ${word}, heading ${heading}`,
  angle: 'Disc angle',
  word: 'Word',
  heading: 'Heading shown',
  truth: 'True heading',
  error: 'Error',
  worst: 'Worst so far',
  none: 'none',
  illegal: 'no such word',
  spin: 'Let it turn',
  stop: 'Stop',
  speed: 'How fast it turns',
  channel: (index: number) => `Channel ${index}`,
  counts: (scale: string) => `Counts of each channel, of ${scale}, with its thresholds`,
  faults: 'Make something wrong, and watch it misread',
  slowness: 'Slow the sensors',
  times: (factor: string) => `${factor} times`,
  boreShift: 'Shift the bore',
  daylight: 'Let in daylight',
  noLightFaults:
    'For a head that tells three marks apart, a dim lamp and the daylight are not followed here.',
  faultyChannel: 'One channel goes wrong',
  faultyHint: 'The lamp and the place of this channel are moved by the two sliders below.',
  lamp: 'Dim its lamp',
  aside: 'Move its sensor along the track',
  mendAll: 'Mend everything',
  compare: 'Compare with another code',
  compareNoMore: 'Show one disc alone',
  compareWith: 'Compare with',
  compareHint: 'The same need, the same shaft, the same faults.',
  says: (positions: number, step: string, tracks: number) =>
    `${positions} positions of ${step} on ${tracks} ${tracks === 1 ? 'track' : 'tracks'} fit this disc.`,
  saysNo: 'This disc cannot be made or read yet. Mend what stands at the top.',
  saysWait: 'The disc is being laid out.',
  what: 'What it must tell apart',
  code: 'Which code',
  size: 'Its size',
  shaft: 'Its shaft',
  process: 'How it is made',
  strip: 'A strip instead of a disc',
  stripHint: 'For gates, floats and sliders: the same code along a line, with the same tracks.',
  stripAdd: 'Make it a strip',
  stripRemove: 'Make it a disc again',
  ownWords: 'Your own words',
  ownWordsHint:
    'A CSV or JSON file with one word a position, such as 00000, 00001, 00011; it is kept beside the instrument file.',
  ownWordsOpen: 'Choose a file of words',
  ownWordsRefused:
    'The file could not be kept. It may have 256 kB at most; behind the server, the folder must be writable.',
  ownWordsHave: (name: string) => `${name} is in the project.`,
  ribs: (count: number) =>
    count === 1
      ? 'One rib, outlined, holds a piece that would fall out.'
      : `${count} ribs, outlined, hold pieces that would fall out.`,
  savePicture: 'Save this picture as SVG',
  codeOf: (name: string) => `Code in use: ${name}`,
  codesTitle: 'Codes for this need, the best first',
  codesWeigh: 'The codes are being weighed …',
  use: (title: string) => `Use ${title}`,
  used: 'in use',
  verdicts: {
    fits: 'fits',
    risky: 'risky',
    'does-not-fit': 'does not fit',
    cannot: 'cannot be made',
  },
  measures: (tracks: number, channels: number, mark: string) =>
    `${tracks} ${tracks === 1 ? 'track' : 'tracks'}, ${channels} ${channels === 1 ? 'sensor' : 'sensors'}, smallest mark ${mark} mm`,
  rosesTitle: 'Wind roses that these positions fill',
  explains: {
    'reflected-gray':
      'One track changes at each step, so a sensor a little off its place costs one step and never half a turn. The first choice for most.',
    'long-run-gray': 'Also one change a step, arranged so that its shortest mark is as long as it can be.',
    'balanced-gray':
      'Also one change a step, with the changes shared out evenly over the tracks: no track is much finer than another.',
    'single-track-gray':
      'One ring for all: every sensor looks at the same track from another angle. Small discs with many sensors round them.',
    'shift-register':
      'One ring whose windows never repeat over a short run: few edges to cut, but several sensors change at once, so a clock track says when to read.',
    vernier:
      'Two combs of slightly different count, like a sliding scale: fine steps from coarse marks, if sensors read between steps.',
    'ternary-modular': 'Three colours or greys instead of two: fewer tracks for the same count, any count.',
    'ternary-reflected': 'Three levels, there and back: fewer tracks, one change a step.',
    'switch-ring': 'Sensors all round one window, as in a wind vane of reed switches. Simple, coarse.',
    'counting-wheel':
      'A comb that counts steps: the simplest to make, but it forgets where it is when the power goes.',
    'natural-binary':
      'Plain counting in twos. Several tracks change at once at half of the steps: the misread you can watch here.',
    'own-words': 'Words of your own from a file.',
  } as Readonly<Record<string, string>>,
  solidsTitle: 'Look at it from all sides',
  solidsShow: 'Show the disc and every printed part in 3-D',
  solidsWait: 'The parts are being made …',
  solidsHint: 'Drag to look round, or use the arrow keys; plus and minus come nearer and go farther.',
  solidsWhich: 'Part',
  solidsName: (name: string) => `${name} seen in space`,
  solidsTable: 'Parts and their sizes',
  solidsPart: 'Part',
  solidsSize: 'Width × depth × height',
  solidsTriangles: 'Triangles',
  solidsNone: 'This browser draws no pictures in space; the sizes stand in the table.',
};
