/** One photo that a reader will want. */
export interface WantedPhoto {
  /** Name of the file without its ending. */
  readonly name: string;
  /** What it shows, as the words under it. */
  readonly shows: string;
  /** How to take it. */
  readonly how: string;
}

/** A photo of the maker's own. */
export interface Photo {
  /** Name of a wanted photo, with an ending: `disc.jpg`. */
  readonly file: string;
  readonly bytes: Uint8Array;
}

/** The photos that whoever builds it again will look for, in the order of the job. */
export const wantedPhotos: readonly WantedPhoto[] = [
  {
    name: 'whole',
    shows: 'The whole instrument in its place',
    how: 'From some steps away, with something of known size.',
  },
  {
    name: 'disc',
    shows: 'The disc from its patterned face',
    how: 'From straight above, the index mark up, a ruler beside it.',
  },
  {
    name: 'disc-edge',
    shows: 'An edge of a window, close',
    how: 'As near as the lens allows: it shows how clean the process cuts.',
  },
  {
    name: 'head',
    shows: 'Lights and sensors in their holder',
    how: 'Before the disc goes on, from the side of the disc.',
  },
  { name: 'gap', shows: 'The gap between sensors and disc', how: 'From the side, light behind it.' },
  {
    name: 'wiring',
    shows: 'The wiring at the controller',
    how: 'Every wire with both its ends in the picture.',
  },
  { name: 'case-open', shows: 'The open case', how: 'All parts in place, cable glands too.' },
  {
    name: 'reading',
    shows: 'A reading on the screen',
    how: 'The first lines that came, with the vane held at a known heading.',
  },
];

/** Endings that a photo may have, and how each file of the kind begins. */
export const photoKinds: readonly {
  readonly endings: readonly string[];
  readonly begins: readonly number[];
}[] = [
  { endings: ['jpg', 'jpeg', 'JPG', 'JPEG'], begins: [0xff, 0xd8, 0xff] },
  { endings: ['png', 'PNG'], begins: [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a] },
  { endings: ['webp', 'WEBP'], begins: [0x52, 0x49, 0x46, 0x46] },
];

/** Every name that a photo may have, the wanted ones in order. */
export const photoFiles: readonly string[] = wantedPhotos.flatMap(({ name }) =>
  photoKinds.flatMap(({ endings }) => endings.map((ending) => `${name}.${ending}`)),
);

/** Whether a file is the kind of picture that its name says. */
export function isPhoto({ file, bytes }: Photo): boolean {
  const ending = file.slice(file.lastIndexOf('.') + 1);
  const kind = photoKinds.find(({ endings }) => endings.includes(ending));
  return kind !== undefined && kind.begins.every((byte, at) => bytes[at] === byte);
}
