import type { Instrument } from '../../instrument/index.ts';
import { showDegrees, showNumber } from '../../units/index.ts';
import type { AsBuiltChange } from './compare.ts';
import type { Fit, FittedDisc } from '../fit.ts';

/** One figure of a certificate. */
export interface CertificateRow {
  readonly figure: string;
  readonly found: string;
  /** What is needed, or `null` for a figure that is only told. */
  readonly needed: string | null;
  /** `null` for a figure that is only told. */
  readonly passes: boolean | null;
}

/** A bench certificate: what was measured of one build, on one day, against its need. */
export interface Certificate {
  readonly name: string;
  readonly recordedAt: string;
  /** Short name of the table; the program shows the same. `null` where no table could be made. */
  readonly tableHash: string | null;
  readonly files: readonly string[];
  readonly samples: number;
  readonly repairs: number;
  readonly passes: boolean;
  readonly reasons: readonly string[];
  readonly rows: readonly CertificateRow[];
  /** What has changed since the certificate before; `null` for the first. */
  readonly changes: readonly AsBuiltChange[] | null;
}

const deg = (value: number): string => showDegrees(Number(value.toFixed(2)));
const percent = (share: number): string => `${showNumber(100 * share, 2)} %`;

/** Least margin that a channel must have. [sigma]; six as for hysteresis, common practice, no source */
const MARGIN_SIGMA = 6;
/** Most of the turn that may be misread. [-]; own choice, as in the verdict */
const MISREAD_SHARE = 0.005;

function channelRows({ channels, recording }: Fit): CertificateRow[] {
  if (recording.content !== 'counts') return [];
  return channels.flatMap(({ channel, pin, levels, inverted }): CertificateRow[] => {
    if (!levels)
      return [
        { figure: `Channel ${channel}`, found: 'never seen to change', needed: 'changes', passes: false },
      ];
    const found =
      `on ${pin}${inverted ? ', inverted' : ''}: ${showNumber(levels.lowPlateau, 0)} to ${showNumber(levels.highPlateau, 0)} counts, ` +
      `thresholds ${levels.lowCounts} and ${levels.highCounts}, noise ${showNumber(levels.noiseCounts, 1)}, ` +
      `margin ${showNumber(levels.marginCounts, 0)} counts (${showNumber(levels.marginSigma, 0)} sigma), ${levels.verdict}`;
    return [
      {
        figure: `Channel ${channel}`,
        found,
        needed: `margin ${MARGIN_SIGMA} sigma`,
        passes: levels.marginSigma >= MARGIN_SIGMA,
      },
    ];
  });
}

const told = (figure: string, found: string): CertificateRow => ({
  figure,
  found,
  needed: null,
  passes: null,
});

const checked = (figure: string, found: string, needed: string, passes: boolean): CertificateRow => ({
  figure,
  found,
  needed,
  passes,
});

/** Figures that must meet the need. */
function checkedRows(
  { tableError, byTable, missing, neverEnding }: FittedDisc,
  accuracyDeg: number,
): CertificateRow[] {
  const misread = byTable.misreadShare + byTable.illegalShare;
  const { maxDeg } = tableError;
  return [
    checked(
      'Largest error, read by the table',
      deg(maxDeg),
      `at most ${deg(accuracyDeg)}`,
      maxDeg <= accuracyDeg,
    ),
    checked(
      'Misread on the recording, by the table',
      percent(misread),
      `at most ${percent(MISREAD_SHARE)}`,
      misread <= MISREAD_SHARE,
    ),
    checked('Positions that never show', String(missing.length), '0', missing.length === 0),
    checked(
      'Positions that go on into a neighbour',
      String(neverEnding.length),
      '0',
      neverEnding.length === 0,
    ),
  ];
}

/** Figures that are only told. */
function toldRows(disc: FittedDisc): CertificateRow[] {
  const { tableError, byDrawing, bore, positions, interpolation, playDeg, twiceDeg } = disc;
  const sigma = positions.reduce((most, { sigmaDeg }) => Math.max(most, sigmaDeg), 0);
  const between = interpolation.isOffered
    ? `error ${percent(interpolation.gain)} ± ${percent(interpolation.gainSigma)} smaller, in the table`
    : 'would not help enough, not in the table';
  return [
    told('Root mean square error, read by the table', deg(tableError.rmsDeg)),
    told('Largest standard error of a word’s middle', deg(sigma)),
    told(
      'Misread on the recording, by the drawing',
      percent(byDrawing.misreadShare + byDrawing.illegalShare),
    ),
    told(
      'Bore off the pattern’s middle',
      `${showNumber(bore.offMm.value, 2)} ± ${showNumber(bore.offMm.sigma, 2)} mm towards position ${bore.boreTowardsPosition}`,
    ),
    told(
      'Once a turn, outermost and innermost track',
      `${deg(bore.outermostDeg)} and ${deg(bore.innermostDeg)}, corrected`,
    ),
    told('Twice a turn', `${deg(twiceDeg.value)} ± ${deg(twiceDeg.sigma)}, corrected`),
    told('Scatter of single edges', `${showNumber(disc.edgeSdMm, 3)} mm`),
    told('Play', playDeg ? `${deg(playDeg.value)} ± ${deg(playDeg.sigma)}` : 'not known'),
    told('Reading between the edges', between),
    told('Turns recorded', showNumber(disc.turns, 2)),
  ];
}

/** The certificate of a fit. */
export function certificateOf(fit: Fit, instrument: Instrument): Certificate {
  const { wiring } = fit;
  const wiringRow: CertificateRow = {
    figure: 'Wiring',
    found: wiring
      ? `explains ${percent(wiring.explainedShare)} of the steps; ${percent(wiring.confidence)} sure against any other`
      : 'not understood',
    needed: 'every step explained',
    passes: wiring !== null && wiring.explainedShare >= 1 - MISREAD_SHARE,
  };
  const { disc } = fit;
  const discRows = disc ? [...checkedRows(disc, instrument.need.accuracyDeg), ...toldRows(disc)] : [];
  return {
    name: instrument.name,
    recordedAt: fit.recordedAt,
    tableHash: fit.asBuilt?.tableHash ?? null,
    files: [...new Set(fit.recording.stretches.map(({ file }) => file))],
    samples: fit.recording.stretches.reduce((sum, { rows }) => sum + rows.length, 0),
    repairs: fit.recording.repairs.length,
    passes: fit.verdict === 'yes',
    reasons: fit.reasons,
    rows: [...discRows, wiringRow, ...channelRows(fit)],
    changes: fit.changes,
  };
}
