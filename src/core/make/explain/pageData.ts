import { formOf, levelColours as levelColoursOf } from '../../disc/index.ts';
import type { HeadPlan } from '../../head/index.ts';
import type { Explained } from './explained.ts';
import type { PageData } from './script/reading.ts';

/** Most positions of the comparison: with more of them the picture is no clearer. [-] */
const COMPARED_MOST = 64;
/** How wide a position of it is drawn. [user units] */
const COMPARED_CELL = 40;
/** Length of strip that is shown at once, as a share of one run through all positions. [-] */
const STRIP_SHOWN = 0.25;
/** Share of a step by which the page opens before half a turn, where natural binary changes most. [-] */
const BEFORE_HALF = 0.2;

/** Shown where a level carries no ink. */
const BARE = '#ffffff';

/** Largest power of two that is no larger, from 4 to 64. [-] */
function comparedPositions(positions: number): number {
  return Math.max(4, Math.min(COMPARED_MOST, 2 ** Math.floor(Math.log2(positions))));
}

/** Width of strip that is shown. [mm] */
export function stripShownMm({ mmPerDeg, heightMm }: { mmPerDeg: number; heightMm: number }): number {
  return Math.max(360 * mmPerDeg * STRIP_SHOWN, 3 * heightMm);
}

/** What each level is called, and its colour where it has one, by level. */
function levelLooks({ disc }: HeadPlan): Pick<PageData, 'levelNames' | 'levelColours' | 'litLevel'> {
  const form = formOf(disc.spec);
  const lit = disc.spec.windowLevel;
  const isColours = disc.code.tracks.some(({ levelCount }) => levelCount === 3);
  if (isColours && (form.kind === 'overlay' || form.kind === 'inlay')) {
    const levelColours = levelColoursOf(disc, form).map((colour) => colour ?? BARE);
    return { levelNames: levelColours.map((colour) => `colour ${colour}`), levelColours, litLevel: -1 };
  }
  const levelNames = [0, 1, 2].map((level) => (level === lit ? 'light' : 'dark'));
  return { levelNames, levelColours: [], litLevel: lit };
}

/** Everything that the page's script knows of a disc. */
export function pageData({ instrument, head }: Explained): PageData {
  const { disc } = head;
  const { code, strip } = disc;
  const isUp = instrument.head.patternedFace === 'up';
  const isReversed = instrument.asBuilt?.sense === 'reversed';
  const compared = comparedPositions(code.positions);
  return {
    positions: code.positions,
    tracks: code.tracks.map(({ startsDeg, levels }) => ({ startsDeg, levels })),
    channels: code.channels.map(({ track, angleDeg }) => ({ track, angleDeg })),
    words: code.words,
    ...levelLooks(head),
    northOffsetDeg: instrument.site.northOffsetDeg,
    sense: isUp === isReversed ? 1 : -1,
    keyDeg: 90 / code.positions,
    startDeg: 180 - (BEFORE_HALF * 360) / compared,
    strip: strip ? { mmPerDeg: strip.mmPerDeg, shownMm: stripShownMm(strip) } : null,
    comparedPositions: compared,
    comparedCell: COMPARED_CELL,
  };
}
