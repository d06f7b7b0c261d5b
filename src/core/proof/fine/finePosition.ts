import { runLengthsDeg } from '../../codes/index.ts';
import { detectorDefaults, planHead, type Detector, type HeadPlan } from '../../head/index.ts';
import { degToRad, showDegrees, showMm } from '../../units/index.ts';
import { turnModel, type TurnModel } from '../turn/turnModel.ts';
import { fineBoundaries } from './fineBoundaries.ts';
import { fineErrors, rampDeg, slitForStepMm, type FineErrors } from './fineReading.ts';

/** Whether a disc can be read between its steps, by how much, and with which head. */
export interface FinePosition {
  /** With the head as it is; `null` where it cannot. */
  readonly asIs: FineErrors | null;
  /** A head made for it on the same disc; `null` where the disc itself cannot. */
  readonly designed: FineDesign | null;
  /** What stands in the way or what it would bring, in plain sentences. n ≥ 1 */
  readonly reasons: readonly string[];
}

/** The head that was designed for it. */
export interface FineDesign {
  /** Width of its slit along the track. [mm] */
  readonly slitWidthMm: number;
  readonly detectorKind: Detector['kind'];
  readonly errors: FineErrors;
}

/** Builds in which readings between steps are tried; the error band is known within a few hundredths of itself. */
const FINE_BUILDS = 128;
/** A slit a hair wider than a step, so that builds with narrow steps have their channel in mid-edge too. [-] */
const SLIT_MARGIN = 1.05;

/**
 * Finer than the disc: the one channel in mid-edge tells where inside its step the disc stands.
 *
 * @param head - The design as it is.
 * @param seed - Seed of the builds. [-]
 * @check src/core/proof/fine/fine.test.ts
 */
export function finePosition(head: HeadPlan, seed: number): FinePosition {
  const model = turnModel(head);
  const { boundaries: list, why } = fineBoundaries(head, model);
  if (list === null) return { asIs: null, designed: null, reasons: [why] };
  const stepDeg = 360 / head.disc.code.positions;
  const gap = coverageGap(
    model,
    stepDeg,
    list.map(({ channel }) => channel),
  );
  const draws = { builds: FINE_BUILDS, seed };
  const asIs = gap === null && head.faults.length === 0 ? fineErrors(head, list, draws) : null;
  const { designed, refusal } = fineDesign(head, stepDeg);
  const errors = designed
    ? fineErrors(designed, fineBoundaries(designed, turnModel(designed)).boundaries!, draws)
    : null;
  const reasons = [
    ...(gap === null ? [] : [gap]),
    ...(asIs ? [brings('As it is', asIs, stepDeg)] : []),
    ...(refusal === null ? [] : [refusal]),
    ...(errors && designed
      ? [
          brings(
            `With a slit of ${showMm(widthOf(designed))} and a ${designed.spec.detector.kind}`,
            errors,
            stepDeg,
          ),
        ]
      : []),
  ];
  return {
    asIs,
    designed:
      designed && errors
        ? { slitWidthMm: widthOf(designed), detectorKind: designed.spec.detector.kind, errors }
        : null,
    reasons,
  };
}

function widthOf({ spec: { aperture } }: HeadPlan): number {
  return aperture.shape === 'slit' ? aperture.widthMm : 0;
}

/** Where no channel is in mid-edge over a part of some step; `null` where one always is. */
function coverageGap(
  { channels: models }: TurnModel,
  stepDeg: number,
  used: readonly number[],
): string | null {
  const seen = [...new Set(used)].map((channel) => models[channel]!.seen);
  const wanted = SLIT_MARGIN * slitForStepMm(stepDeg, Math.max(...seen.map(({ radiusMm }) => radiusMm)));
  const ramp = Math.min(...seen.map(rampDeg));
  if (ramp >= 0.95 * stepDeg) return null;
  return (
    `The spot is narrower than a step of ${showDegrees(stepDeg)}: over part of it no channel is in mid-edge and nothing tells where ` +
    `the disc stands (an edge shows over ${showDegrees(ramp)}). A slit of ${showMm(Number(wanted.toFixed(2)))} would do.`
  );
}

/** A head on the same disc with a slit one step wide and a linear detector, or why there can be none. */
function fineDesign(
  head: HeadPlan,
  stepDeg: number,
): { readonly designed: HeadPlan | null; readonly refusal: string | null } {
  const { disc, asked: spec, circuit, board, rate } = head;
  const radius = Math.max(...head.channels.map(({ radiusMm }) => radiusMm));
  const widthMm = Number((SLIT_MARGIN * slitForStepMm(stepDeg, radius)).toFixed(2));
  for (const track of disc.tracks) {
    const mark = Math.min(...runLengthsDeg(disc.code.tracks[track.track]!)) * degToRad(1) * track.midRadiusMm;
    if (mark >= widthMm) continue;
    return {
      designed: null,
      refusal:
        `A slit one step wide, ${showMm(widthMm)}, is wider than the shortest mark of track ${track.track}, ${showMm(mark)}, so its ` +
        'counts never reach lit and dark: this disc cannot be read finer than its steps. Let tracks of long marks lie inside.',
    };
  }
  const detector = spec.detector.kind === 'photoresistor' ? detectorDefaults.phototransistor : spec.detector;
  const lengthMm = spec.aperture.shape === 'slit' ? spec.aperture.lengthMm : widthMm / 2;
  const plan = planHead(
    disc,
    { ...spec, detector, aperture: { shape: 'slit', widthMm, lengthMm } },
    spec.detector.kind === 'photoresistor' ? { ...circuit, resistorOhm: null } : circuit,
    board,
    rate,
  );
  const [fault] = plan.faults;
  return fault
    ? { designed: null, refusal: `${fault.what} (${fault.got})` }
    : { designed: plan, refusal: null };
}

function brings(what: string, { rmsDeg, p95Deg, unreadShare }: FineErrors, stepDeg: number): string {
  const plain = stepDeg / Math.sqrt(12);
  const unread =
    unreadShare > 0
      ? `, ${Number((100 * unreadShare).toPrecision(2))} % of readings showing no position`
      : '';
  return rmsDeg < plain
    ? `${what} the disc is read to ${showDegrees(rmsDeg)} rms and 95 % of readings within ${showDegrees(p95Deg)} between its steps${unread}; ` +
        `the steps alone give ${showDegrees(plain)} rms.`
    : `${what} reading between the steps brings nothing: ${showDegrees(rmsDeg)} rms, where the steps alone give ${showDegrees(plain)}${unread}.`;
}
