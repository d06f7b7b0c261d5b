import { boardNamed, type Board } from '../boards/index.ts';
import {
  holdsNotch,
  thicknessDefaultsMm,
  withAllowance,
  type DiscForm,
  type DiscSpec,
} from '../disc/index.ts';
import { BrokenPromise } from '../error/index.ts';
import {
  ledWavelengthDefaultsNm,
  lightPartDefaults,
  sensorPartDefaults,
  type HeadSpec,
} from '../head/index.ts';
import type { PartsSpec } from './partsSpec.ts';
import type { CupsSpec, Instrument, Need } from './instrument.ts';
import {
  HUB_SHARE,
  HUB_WALLS_MM,
  LEAST_RIM_MM,
  NOTCH_WIDTH_MM,
  WEB_MARGIN,
} from './schema/derivedDefaults.ts';
import type { InstrumentDraft } from './schema/instrumentSchema.ts';

/**
 * Fewest positions, and an even number of them, whose step is no larger than asked.
 *
 * @param resolution - Largest step. [deg], above 0
 * @returns An even count, 2 or more: 11.25 gives 32, 10 gives 36, 11 gives 34. [-]
 */
export function positionsFor(resolution: number): number {
  const turns = 360 / resolution;
  return 2 * Math.ceil(turns / 2 - 1e-9); // 360 / 0.1 is a hair above 3600, which is meant
}

/** Positions that `need` asks for, or `null` when it names neither a count nor a resolution. [-] */
export function positionsOf(need: InstrumentDraft['need']): number | null {
  if (need.positions !== undefined) return need.positions;
  return need.resolutionDeg === undefined ? null : positionsFor(need.resolutionDeg);
}

/** Hub as written, or wide enough for bore and innermost track. [mm] */
export function hubDiameterOf(disc: InstrumentDraft['disc']): number {
  return (
    disc.hubDiameterMm ??
    toMicrometre(Math.max(disc.bore.diameterMm + HUB_WALLS_MM, HUB_SHARE * disc.diameterMm))
  );
}

/** Length without the last bits that arithmetic leaves: 1.5 × 0.8 is 1.2000000000000002. [mm], to 1 um */
function toMicrometre(length: number): number {
  return Math.round(length * 1000) / 1000;
}

/** Pin of the cups as written, or the board's first with an interrupt of its own. */
export function cupsPinOf(cups: NonNullable<InstrumentDraft['cups']>, board: Board): string {
  const pin = cups.pin ?? board.interruptPins[0];
  if (pin === undefined) throw new BrokenPromise(`The board ${board.name} names no interrupt pin.`);
  return pin;
}

function resolveNeed(need: InstrumentDraft['need']): Need {
  const positions = positionsOf(need);
  if (positions === null) throw new BrokenPromise('A file without positions passed its checks.');
  const { turnRateDegPerS, turnRangeDeg, mustSurvivePowerLoss, wantedYield } = need;
  const accuracyDeg = need.accuracyDeg ?? 360 / positions;
  return { positions, accuracyDeg, turnRateDegPerS, turnRangeDeg, mustSurvivePowerLoss, wantedYield };
}

/** A form as the disc step knows it: an overlay without colours of its own is black. */
function formSpecOf(form: NonNullable<InstrumentDraft['disc']['form']>): DiscForm {
  if (form.kind !== 'overlay') return form;
  return form.colours ? { kind: 'overlay', colours: form.colours } : { kind: 'overlay' };
}

/** The disc with the defaults that hang on its other fields; its sizes need not fit each other. */
export function resolveDisc(disc: InstrumentDraft['disc']): DiscSpec {
  const webMm = disc.webMm ?? toMicrometre(WEB_MARGIN * disc.process.minWebMm);
  const rimMm = disc.rimMm ?? toMicrometre(Math.max(LEAST_RIM_MM, 2 * webMm));
  const { form, strip, allowance, densityKgPerM3, ...rest } = disc;
  const { process, drawn } = withAllowance(disc.process, disc.bore.diameterMm, allowance);
  const notchDepthMm = disc.notch.depthMm ?? toMicrometre(rimMm / 2);
  const hasRoom = holdsNotch({ process, rimMm, ...(drawn ? { drawn } : {}) }, notchDepthMm);
  return {
    ...rest,
    process,
    ...(drawn ? { drawn } : {}),
    ...(form ? { form: formSpecOf(form) } : {}),
    ...(strip ? { strip } : {}),
    ...(densityKgPerM3 === undefined ? {} : { densityKgPerM3 }),
    hubDiameterMm: hubDiameterOf(disc),
    thicknessMm: disc.thicknessMm ?? thicknessDefaultsMm[disc.process.kind],
    webMm,
    rimMm,
    notch: { widthMm: disc.notch.widthMm ?? (hasRoom ? NOTCH_WIDTH_MM : 0), depthMm: notchDepthMm },
  };
}

function resolveHead(head: InstrumentDraft['head']): HeadSpec {
  const { light } = head;
  if (light.kind === 'laser') return { ...head, light };
  const wavelengthNm = light.wavelengthNm ?? ledWavelengthDefaultsNm[head.detector.kind];
  return { ...head, light: { ...light, wavelengthNm } };
}

function resolveCups({ cups, controller }: InstrumentDraft): CupsSpec | null {
  if (cups === null) return null;
  const board = boardNamed(controller.board);
  if (!board) throw new BrokenPromise('The schema let through a board that does not exist.');
  return { ...cups, pin: cupsPinOf(cups, board) };
}

function resolveParts({ parts, head }: InstrumentDraft): PartsSpec {
  return {
    ...parts,
    sensorPart: parts.sensorPart ?? sensorPartDefaults[head.detector.kind],
    lightPart: parts.lightPart ?? lightPartDefaults[head.light.kind],
  };
}

/**
 * Fills in the defaults that hang on other fields.
 *
 * @param draft - A file that fits the schema and has passed `fileRules`.
 */
export function resolveInstrument(draft: InstrumentDraft): Instrument {
  return {
    name: draft.name,
    need: resolveNeed(draft.need),
    sensing: draft.sensing,
    disc: resolveDisc(draft.disc),
    head: resolveHead(draft.head),
    circuit: draft.circuit,
    controller: draft.controller,
    cups: resolveCups(draft),
    power: draft.power,
    site: draft.site,
    parts: resolveParts(draft),
    asBuilt: draft.asBuilt,
  };
}
