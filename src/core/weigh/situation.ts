import { boardNamed, type Board } from '../boards/index.ts';
import { rankCodes, type CodeNeed, type RankedCode } from '../codes/index.ts';
import { BrokenPromise } from '../error/index.ts';
import { codeNeedOf, type Instrument } from '../instrument/index.ts';
import type { IndexWait } from './wait/indexWait.ts';
import { arcPlaces } from './wait/windShares.ts';
import type { WindView } from './wait/windView.ts';

/** What every principle is reckoned from. */
export interface Situation {
  readonly instrument: Instrument;
  readonly wind: WindView;
  readonly board: Board;
  /** To and fro in a year. [turns] */
  readonly turnsPerYear: number;
  /** Waits for an index, where the wind is commonest and on north. */
  readonly waits: { readonly best: IndexWait; readonly north: IndexWait };
  /** Codes for a disc of these marks, best first, counting wheels and switch rings left out. */
  codesFor(marks: CodeNeed['marks']): readonly RankedCode[];
}

/** Turns a day where nothing is stated and no wind turns the shaft. Common practice, no source. [-] */
const DRIVEN_TURNS_PER_DAY = 4;

const DAYS_A_YEAR = 365.25;

/** Codes that are principles of their own here. */
const NO_DISC_CODES = new Set(['counting-wheel', 'switch-ring']);

/**
 * A motor that looks for its index after power-up, or a hand that turns until it is met.
 *
 * @source derived: the index lies anywhere within the range, and the shaft turns one way at the fastest turn asked.
 */
function drivenWait({ need }: Instrument): IndexWait {
  const wholeH = need.turnRangeDeg / need.turnRateDegPerS / 3600;
  return {
    basis: 'driven',
    indexDeg: 0,
    powerUps: 0,
    meanH: wholeH / 2,
    p95H: 0.95 * wholeH,
    neverShare: 0,
    horizonH: wholeH,
  };
}

/** An index is a mark of one step; where it stands hardly matters to its width. [deg] */
const INDEX_ARC_DEG = 30;

function waitsFor(instrument: Instrument, wind: WindView): Situation['waits'] {
  if (instrument.sensing.turnedBy !== 'wind') {
    const driven = drivenWait(instrument);
    return { best: driven, north: driven };
  }
  const { atDeg } = arcPlaces(wind, INDEX_ARC_DEG).most;
  const north = wind.waitAt(0);
  return { best: atDeg === 0 ? north : wind.waitAt(atDeg), north };
}

/**
 * Gathers what the principles share, each thing reckoned once.
 *
 * @param instrument - Its need, sensing, site and process are used. [deg], [h]
 * @param wind - Of the site, modelled or recorded. [deg], [h]
 */
export function situationOf(instrument: Instrument, wind: WindView): Situation {
  const { sensing, controller } = instrument;
  const board = boardNamed(controller.board);
  if (!board) throw new BrokenPromise('The reader let through a board that does not exist.');
  const ownPerDay = sensing.turnedBy === 'wind' ? wind.turnsPerDay : DRIVEN_TURNS_PER_DAY;
  const ranked = new Map<string, readonly RankedCode[]>();
  return {
    instrument,
    wind,
    board,
    turnsPerYear: DAYS_A_YEAR * (sensing.turnsPerDay ?? ownPerDay),
    waits: waitsFor(instrument, wind),
    codesFor(marks) {
      const known = ranked.get(marks);
      if (known) return known;
      const all = rankCodes({ ...codeNeedOf(instrument), mustSurvivePowerLoss: true, marks });
      const codes = all.filter(({ name }) => !NO_DISC_CODES.has(name));
      ranked.set(marks, codes);
      return codes;
    },
  };
}
