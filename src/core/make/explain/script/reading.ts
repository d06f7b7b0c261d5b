// Runs in the page as text, so every function here stands on its own: no imports, no template strings.

/** A ring as the page knows it; see `Track` of core/codes. */
export interface PageTrack {
  readonly startsDeg: readonly number[];
  readonly levels: readonly number[];
}

/** Everything the page's script knows of a disc. */
export interface PageData {
  readonly positions: number;
  readonly tracks: readonly PageTrack[];
  readonly channels: readonly { readonly track: number; readonly angleDeg: number }[];
  /** Words in order of position. */
  readonly words: readonly string[];
  /** What a level is called, by level. */
  readonly levelNames: readonly string[];
  /** Colour of each level on a disc of colours; empty on any other. */
  readonly levelColours: readonly string[];
  /** Level that is shown as light; -1 on a disc of colours. */
  readonly litLevel: number;
  readonly northOffsetDeg: number;
  /** 1 where headings grow with the disc angle, -1 where they fall. */
  readonly sense: number;
  /** Turn by one press of an arrow key. [deg] */
  readonly keyDeg: number;
  /** Disc angle at which the page opens. [deg] */
  readonly startDeg: number;
  /** Length for each degree, and how much of it is shown, of a strip; `null` for a disc. [mm/deg], [mm] */
  readonly strip: { readonly mmPerDeg: number; readonly shownMm: number } | null;
  /** Positions of the two codes that are held against each other; a power of two. [-] */
  readonly comparedPositions: number;
  /** How wide a position of those is drawn. [user units] */
  readonly comparedCell: number;
}

/** What the sensors see at one place. */
export interface PageReading {
  readonly levels: readonly number[];
  readonly word: string;
  /** `null` where the word belongs to no position, or to several. */
  readonly position: number | null;
  /** Middle of the position. [deg] */
  readonly headingDeg: number | null;
}

/** An angle within one turn. [deg], [0, 360) */
export function withinTurn(angleDeg: number): number {
  return ((angleDeg % 360) + 360) % 360;
}

/** Level of a ring at a disc angle. [deg] */
export function levelUnder(track: PageTrack, angleDeg: number): number {
  const at = withinTurn(angleDeg);
  let run = track.levels.length - 1;
  for (let i = 0; i < track.startsDeg.length && track.startsDeg[i]! <= at; i += 1) run = i;
  return track.levels[run]!;
}

/** What the sensors see with a disc angle under the head's reference line. [deg] */
export function readingUnder(data: PageData, angleDeg: number): PageReading {
  const levels = data.channels.map((channel) =>
    levelUnder(data.tracks[channel.track]!, angleDeg + channel.angleDeg),
  );
  const word = levels.join('');
  const position = data.words.indexOf(word);
  if (position < 0 || data.words.lastIndexOf(word) !== position) {
    return { levels, word, position: null, headingDeg: null };
  }
  const centreDeg = ((position + 0.5) * 360) / data.positions;
  return {
    levels,
    word,
    position,
    headingDeg: withinTurn(data.northOffsetDeg + data.sense * centreDeg),
  };
}

/**
 * Positions that natural binary and Gray read when the sensor of the coarsest ring stands aside.
 *
 * @param positions - A power of two. [-]
 * @param place - Where the other sensors look. [positions], [0, positions)
 * @param aside - How far ahead that one looks. [positions]
 * @source F. Gray, US patent 2,632,058 (1953): g = k XOR floor(k/2).
 */
export function comparedReadings(
  positions: number,
  place: number,
  aside: number,
): { readonly right: number; readonly binary: number; readonly gray: number } {
  const top = positions / 2;
  const right = Math.floor(place) % positions;
  const ahead = Math.floor(place + aside) % positions;
  const binary = (right % top) + (ahead >= top ? top : 0);
  const grayWord = ((right ^ (right >> 1)) % top) + (ahead >= top ? top : 0);
  let gray = 0;
  for (let left = grayWord; left > 0; left >>= 1) gray ^= left;
  return { right, binary, gray };
}
