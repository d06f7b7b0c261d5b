/** Words of the page that makes the files. */
export const make = {
  cautions: 'Before you begin: what can hurt',
  source: (source: string) => `Source: ${source}`,
  couponTitle: 'First a coupon',
  couponWhy:
    'One small piece shows what your machine really does: how wide its cuts are, which bore fits your shaft, whether the material stops the light. Make it, measure it, type the numbers in; every later drawing uses them.',
  couponMake: 'Make the coupon',
  couponFields: 'What you measured on the coupon',
  allTitle: 'Then everything',
  paper: 'Paper of the drawing sheets',
  papers: { a4: 'A4', a3: 'A3', letter: 'Letter' } as Readonly<Record<string, string>>,
  paperHint: 'Sheets are drawn at true size, each with a bar to measure before you trust it.',
  makeAll: 'Make all files',
  making: 'Making …',
  takes: 'Solids, sheets and the program are being made and each is read back. This takes some seconds.',
  saveAll: 'Save everything as one zip',
  save: 'Save',
  show: 'Show',
  saveOne: (path: string) => `Save ${path}`,
  showOne: (path: string) => `Show ${path} in a tab`,
  size: (kilobytes: string) => `${kilobytes} kB`,
  folders: {
    '': 'Disc, sheets and papers',
    coupon: 'Coupon: make this first',
    prints: 'Printed parts',
    program: 'Program for the controller',
    wiring: 'Wiring',
  } as Readonly<Record<string, string>>,
  saysWait: 'Nothing has been made of this design yet.',
  saysYes: (files: number) =>
    `${files} files are ready, each read back and decoded. The proof says this design will read right.`,
  saysNo: (reasons: string) =>
    `The files are ready, but the proof says no, so think before you cut. ${reasons}`,
};
