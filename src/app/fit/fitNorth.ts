import { throwIfAny, VanewrightError, type Problem } from '../../core/error/index.ts';
import {
  compassBearing,
  declinationAt,
  knownBearing,
  landmarkBearing,
  setNorth,
  sunBearing,
  type Declination,
  type NorthAdvice,
  type Place,
  type TrueBearing,
} from '../../core/fit/index.ts';
import {
  applyFields,
  INSTRUMENT_FILE_MOST_BYTES,
  readInstrument,
  type Instrument,
  type NorthSetting,
} from '../../core/instrument/index.ts';
import type { InstrumentFiles, OutputFolder, StopSign, Written } from '../../ports/index.ts';

/** What the vane is made to point at. */
export type NorthTarget =
  | { readonly by: 'bearing'; readonly bearingDeg: number; readonly sigmaDeg: number }
  | { readonly by: 'landmark'; readonly place: Place }
  | { readonly by: 'sun' }
  | { readonly by: 'compass'; readonly magneticDeg: number };

/** How north is to be set, and what to do with it. */
export interface NorthRequest {
  readonly path: string;
  readonly targets: readonly NorthTarget[];
  /** What the target is, in the maker's words. */
  readonly name: string;
  /** Where the vane stands; `null` takes the site of the file. [deg] */
  readonly latitudeDeg: number | null;
  readonly longitudeDeg: number | null;
  /** When; ISO 8601 with a zone. */
  readonly at: string;
  /** What the display shows with the vane pointing there; `null` when the mast is turned instead. [deg] */
  readonly showsDeg: number | null;
  /** Put the offset and its day into the instrument file. */
  readonly write: boolean;
  /** Folder for the picture; `null` for none. */
  readonly out: string | null;
}

/** North as it is to be set, and what was written of it. */
export interface FittedNorth {
  readonly name: string;
  readonly by: NorthTarget['by'];
  readonly bearing: TrueBearing;
  /** `null` where no compass was used. */
  readonly declination: Declination | null;
  readonly advice: NorthAdvice;
  /** Settings of north, the new one last once it is written. */
  readonly history: readonly NorthSetting[];
  readonly isWritten: boolean;
  readonly written: Written | null;
}

/** Where the vane stands, by the words of the command or by the file. */
function placeOf({ site }: Instrument, request: NorthRequest): Place {
  const latitudeDeg = request.latitudeDeg ?? site.latitudeDeg;
  const longitudeDeg = request.longitudeDeg ?? site.longitudeDeg;
  if (latitudeDeg !== null && longitudeDeg !== null) return { latitudeDeg, longitudeDeg };
  throw new VanewrightError({
    code: 'fit/place-not-told',
    what: 'The bearing depends on where the vane stands, and that is not told.',
    where: `${request.path} › site`,
    got: `latitude ${latitudeDeg ?? 'not stated'}, longitude ${longitudeDeg ?? 'not stated'}`,
    allowed: 'both, in degrees, north and east positive',
    fix: 'Set site.latitudeDeg and site.longitudeDeg in the file, or add --latitude-deg 53.5 --longitude-deg 10.0.',
  });
}

function bearingOf(target: NorthTarget, instrument: Instrument, request: NorthRequest): TrueBearing {
  const { name, at } = request;
  if (target.by === 'bearing') return knownBearing(target.bearingDeg, target.sigmaDeg, name);
  const site = placeOf(instrument, request);
  if (target.by === 'landmark') return landmarkBearing(site, target.place, name);
  if (target.by === 'sun') return sunBearing(site, at);
  return compassBearing(target.magneticDeg, site, at, name);
}

/** What the words of the command lack, all at once. */
function missing({ targets, write, showsDeg }: NorthRequest): Problem[] {
  const problems: Problem[] = [];
  if (targets.length !== 1) {
    problems.push({
      code: 'fit/one-target',
      what: 'The vane can be made to point at one thing only.',
      where: 'command line',
      got: targets.map(({ by }) => by).join(', ') || 'nothing to point at',
      allowed: 'one of --bearing-deg, --landmark-deg, --sun, --compass-deg',
      fix: 'Name one, such as --landmark-deg 53.55,10.01 --name "church tower".',
    });
  }
  if (write && showsDeg === null) {
    problems.push({
      code: 'fit/display-not-told',
      what: 'Without what the display shows there is no offset to write.',
      where: 'command line',
      got: '--write without --shows-deg',
      allowed: 'both, or neither',
      fix: 'Add what the display shows while the vane points there, such as --shows-deg 350.',
    });
  }
  return problems;
}

/**
 * How to set north: what the display must show while the vane points at something whose bearing is known.
 *
 * @throws VanewrightError when nothing safe can be said; nothing is written then.
 */
export async function fitNorth(
  { files, output }: { readonly files: InstrumentFiles; readonly output: OutputFolder },
  request: NorthRequest,
  stop: StopSign,
): Promise<FittedNorth> {
  const { path, showsDeg, at, out, write } = request;
  throwIfAny(missing(request));
  const target = request.targets[0]!;
  const text = await files.readText(path, INSTRUMENT_FILE_MOST_BYTES);
  const { instrument } = readInstrument(text, path);
  const { northOffsetDeg: offsetDeg, northHistory } = instrument.site;
  const bearing = bearingOf(target, instrument, request);
  const now = showsDeg === null ? null : { showsDeg, offsetDeg, at: new Date(at).toISOString() };
  const advice = setNorth(bearing, now);
  const { entry } = advice;
  const edited =
    write && entry
      ? applyFields(text, path, {
          section: 'site',
          set: { northOffsetDeg: entry.offsetDeg },
          append: { list: 'northHistory', entry: { ...entry } },
        })
      : null;
  const picture = { path: 'north.svg', content: `${advice.picture.html}\n` };
  const written = out === null ? null : await output.write(out, [picture], stop, 'part');
  if (edited !== null) await files.replaceText(path, edited);
  return {
    name: instrument.name,
    by: target.by,
    bearing,
    declination: target.by === 'compass' ? declinationAt(placeOf(instrument, request), at) : null,
    advice,
    history: edited !== null && entry ? [...northHistory, entry] : northHistory,
    isWritten: edited !== null,
    written,
  };
}
