import { levelAt, type Level } from '../../codes/index.ts';
import { discPlace, drawnOf, stripPlace, type DiscPlan, type FaultPlace } from '../../disc/index.ts';
import { VanewrightError, type Problem } from '../../error/index.ts';
import { degToRad, radToDeg, showDegrees, showMm, type Degrees } from '../../units/index.ts';
import type { MadeFile } from '../madeFile.ts';
import { BAR_MM } from '../pdf/footer.ts';
import { FAULT_FILE } from '../faultFile.ts';
import { PATTERN_MARK } from '../pdf/trueSize.ts';
import { faultSvg } from '../svg/faultSvg.ts';
import type { ShownLevels } from './byLoops.ts';
import { disagreement } from './disagreement.ts';
import { readPdfSheets } from './pdf/pdfSheets.ts';
import { shownBy } from './shownLevels.ts';

/** Closest to an edge that a place is read: files are rounded, and arcs of solids followed to 0.01 mm. [mm] */
const CLEAR_MM = 0.03;

/** Places read in each step of a turn, as shares of it; those too close to an edge are moved inwards. */
const SHARES = [0, 0.25, 0.5, 0.75, 1] as const;

/** A word that a file does not show. */
interface Misread {
  readonly angleDeg: Degrees;
  readonly read: string;
  readonly wanted: string;
  /** Where the first wrong channel looks. */
  readonly place: FaultPlace;
}

/** Where a track lies at an angle, by plain geometry of its own. [mm], y up */
function placeOf(plan: DiscPlan, track: number, angle: Degrees): [number, number] {
  const { scale } = drawnOf(plan.spec);
  if (plan.strip) {
    const { lowMm, highMm } = plan.strip.bands[track]!;
    return [scale * angle * plan.strip.mmPerDeg, (scale * (lowMm + highMm)) / 2];
  }
  const radius = scale * plan.tracks[track]!.midRadiusMm;
  return [radius * Math.sin(degToRad(angle)), radius * Math.cos(degToRad(angle))];
}

/** The same place on the drawing as it is wanted, for the picture of the fault. */
function faultPlaceOf(plan: DiscPlan, track: number, angle: Degrees): FaultPlace {
  if (!plan.strip) return discPlace(plan.tracks[track]!.midRadiusMm, angle);
  const { scale } = drawnOf(plan.spec);
  const [x, y] = placeOf(plan, track, angle);
  return stripPlace({ xMm: x / scale, yMm: y / scale });
}

/** Angle within which an edge may lie beside its place in a file, at a radius. [deg] */
function clearDeg(plan: DiscPlan, radiusMm: number): Degrees {
  return radToDeg((CLEAR_MM + Math.abs(drawnOf(plan.spec).edgeLossMm)) / radiusMm);
}

/** Angles at which a turn is read, clear of every edge however the drawing moves it. [deg] */
function anglesOf(plan: DiscPlan): Degrees[] {
  const { positions } = plan.code;
  const step = 360 / positions;
  const smallest = Math.min(...plan.tracks.map(({ midRadiusMm }) => midRadiusMm));
  const clear = clearDeg(plan, smallest);
  const margin = Math.min(clear, step / 2);
  return Array.from({ length: positions }, (_, position) =>
    SHARES.map((share) => step * position + Math.min(Math.max(share * step, margin), step - margin)),
  ).flat();
}

/** Level a channel should show, or `null` too close to an edge of its track: tracks that clock or count have edges inside a step. */
function wantedLevel(plan: DiscPlan, track: number, angle: Degrees): Level | null {
  const marks = plan.code.tracks[track]!;
  const clear = clearDeg(plan, plan.tracks[track]!.midRadiusMm);
  const level = levelAt(marks, angle);
  return [angle - clear, angle + clear].every((near) => levelAt(marks, near) === level) ? level : null;
}

function misreads(plan: DiscPlan, shown: ShownLevels): Misread[] {
  const { channels } = plan.code;
  return anglesOf(plan).flatMap((angle): Misread[] => {
    const wanted = channels.map(({ track, angleDeg }) => wantedLevel(plan, track, angle + angleDeg));
    const read = channels.map(({ track, angleDeg }, channel) =>
      wanted[channel] === null ? '.' : shown(...placeOf(plan, track, angle + angleDeg)).join('&') || '-',
    );
    const wrong = read.findIndex((level, channel) => level !== String(wanted[channel] ?? '.'));
    if (wrong < 0) return [];
    const { track, angleDeg } = channels[wrong]!;
    const place = faultPlaceOf(plan, track, angle + angleDeg);
    return [
      { angleDeg: angle, read: read.join(''), wanted: wanted.map((level) => level ?? '.').join(''), place },
    ];
  });
}

/** What the bar on a sheet may be off by. [mm] */
const BAR_WITHIN_MM = 0.001;

/** Sheets whose bar to measure is not as long as it says. */
function barProblems({ path, content }: MadeFile): Problem[] {
  if (typeof content === 'string' || !path.endsWith('.pdf')) return [];
  const what = 'The bar that tells whether a sheet was printed at its true size has another length.';
  return readPdfSheets(content, PATTERN_MARK).flatMap(({ barMm }, index): Problem[] => {
    if (Math.abs(barMm - BAR_MM) <= BAR_WITHIN_MM) return [];
    const got = barMm > 0 ? showMm(Number(barMm.toFixed(3))) : 'no bar';
    return [disagreement(`${path}, sheet ${index + 1}`, what, got, showMm(BAR_MM))];
  });
}

/** What reading the files of a disc back has found. */
export interface ReadBack {
  /** Files, or sets of files, that were read. */
  readonly read: readonly string[];
  readonly problems: readonly Problem[];
  /** Places of the drawing that a file shows wrongly. */
  readonly places: readonly FaultPlace[];
}

/**
 * Reads every file of a disc back and decodes it around the turn, by code that shares nothing with what drew it.
 *
 * @param plan - What the files should show.
 * @param files - SVG, DXF, STL, 3MF and PDF of the disc; others are passed over.
 * @returns One `make/file-disagrees` a file that shows a wrong word anywhere, and one a sheet whose bar is off.
 * @check src/core/make/readBack/readBack.test.ts (files of other discs, and damaged ones)
 */
export function readBack(plan: DiscPlan, files: readonly MadeFile[]): ReadBack {
  const problems: Problem[] = [];
  const places: FaultPlace[] = [];
  const shown = shownBy(plan, files);
  for (const [path, levels] of shown) {
    const wrong = levels ? misreads(plan, levels) : [];
    if (levels && wrong.length === 0) continue;
    const [first] = wrong;
    places.push(...wrong.map(({ place }) => place));
    problems.push(
      disagreement(
        path,
        'A file was read back and does not show the code of the disc.',
        first
          ? `word ${first.read} at ${showDegrees(first.angleDeg)}, one of ${wrong.length} places`
          : 'no pattern in it',
        first ? `word ${first.wanted}` : 'the pattern of the disc',
      ),
    );
  }
  problems.push(...files.flatMap(barProblems));
  return { read: [...shown.keys()], problems, places };
}

/** Files of a disc that do not show its code; carries a drawing of the places, where there are some. */
export class FilesDisagree extends VanewrightError {
  readonly drawing: MadeFile | null;

  constructor(problems: readonly [Problem, ...Problem[]], drawing: MadeFile | null) {
    super(problems);
    this.drawing = drawing;
  }
}

/** Throws where a file of the disc does not show its code. @throws FilesDisagree with `make/file-disagrees` */
export function assertReadBack(plan: DiscPlan, files: readonly MadeFile[]): void {
  const { problems, places } = readBack(plan, files);
  const [first, ...rest] = problems;
  if (!first) return;
  const faults = [{ what: problems.map(({ where, what }) => `${where}: ${what}`).join(' '), places }];
  const content = faultSvg({ spec: plan.spec, plan, faults });
  throw new FilesDisagree([first, ...rest], places.length > 0 ? { path: FAULT_FILE, content } : null);
}
