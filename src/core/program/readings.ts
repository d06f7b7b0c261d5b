import { asBuiltHash, headingOfDiscAngle, type AsBuilt, type Instrument } from '../instrument/index.ts';
import type { CodeTable, Word } from '../codes/index.ts';
import { wordTableFor, type WordTable } from './wordTable.ts';

/** Where every word stands, with the headings of an instrument whose north offset is 0. */
export interface Readings {
  readonly table: WordTable;
  /** Middle of each position, in hundredths. [0.01 deg], n = positions */
  readonly headingHundredths: readonly number[];
  /** From that middle to either end, in hundredths, rounded up. [0.01 deg], n = positions */
  readonly halfWidthHundredths: readonly number[];
  /** How far apart two neighbours may seem to stand, because an end is only measured. [0.01 deg] */
  readonly slackHundredths: number;
  /** Short name of the table. */
  readonly hash: string;
}

/** One word with the piece of the turn that shows it. */
interface Place {
  readonly word: Word;
  readonly centreDeg: number;
  readonly halfWidthDeg: number;
}

/** Places as drawn: equal steps, first one from the index mark on. [deg] */
function drawnPlaces({ words, positions }: CodeTable): Place[] {
  const step = 360 / positions;
  return words.map((word, i) => ({ word, centreDeg: (i + 0.5) * step, halfWidthDeg: step / 2 }));
}

/** Three as soon as one track has three. [-] */
export function levelCountOf({ tracks }: CodeTable): 2 | 3 {
  return tracks.some(({ levelCount }) => levelCount === 3) ? 3 : 2;
}

/** The frame that headings follow; a build whose sense is reversed looks the other way than it was drawn. */
function headingFrame({ head }: Instrument, asBuilt: AsBuilt | null) {
  const isReversed = asBuilt?.sense === 'reversed';
  const otherFace = head.patternedFace === 'up' ? ('down' as const) : ('up' as const);
  return {
    site: { northOffsetDeg: 0 },
    head: { patternedFace: isReversed ? otherFace : head.patternedFace },
  };
}

/** The table that the program reads by: as the build was found, or as it is drawn. */
export function readingsOf(instrument: Instrument, code: CodeTable): Readings {
  const { asBuilt } = instrument;
  const places = asBuilt ? asBuilt.positions : drawnPlaces(code);
  const frame = headingFrame(instrument, asBuilt);
  const sense = frame.head.patternedFace === 'up' ? ('reversed' as const) : ('same' as const);
  return {
    table: wordTableFor(
      places.map(({ word }) => word),
      code.channels.length,
      levelCountOf(code),
    ),
    headingHundredths: places.map(
      ({ centreDeg }) => Math.round(headingOfDiscAngle(frame, centreDeg) * 100) % 36_000,
    ),
    halfWidthHundredths: places.map(({ halfWidthDeg }) => Math.ceil(halfWidthDeg * 100 - 1e-6)),
    slackHundredths: asBuilt ? Math.ceil(18_000 / places.length) : 0,
    hash: asBuiltHash(asBuilt ?? { channels: [], sense, positions: places }),
  };
}
