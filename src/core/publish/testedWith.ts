import { formOf } from '../disc/index.ts';
import type { HeadPlan } from '../head/index.ts';
import type { Instrument } from '../instrument/index.ts';
import type { Proof } from '../proof/index.ts';
import { showDegrees, showNumber } from '../units/index.ts';
import type { CertificateFigures } from './givenCertificate.ts';

/** One row: what, and with what value. */
export interface TestedRow {
  readonly what: string;
  readonly value: string;
  /** `measured` on the finished build, `proved` in virtual builds, `designed` as the file says. */
  readonly by: 'designed' | 'proved' | 'measured';
}

/** What the kit is made from. */
export interface TestedDesign {
  readonly instrument: Instrument;
  readonly head: HeadPlan;
  readonly proof: Proof;
}

function designedRows({ instrument, head }: TestedDesign): TestedRow[] {
  const { disc, board, spec, levels } = head;
  const { process, diameterMm } = disc.spec;
  const { light, aperture, detector } = spec;
  const rows: [string, string][] = [
    ['board', `${board.title}, ${board.chip}, converter of ${board.converterBits} bits`],
    ['sensor', detector.kind],
    ['light', light.kind],
    ['aperture', aperture.shape],
    [
      'process',
      `${process.kind}, ${formOf(disc.spec).kind}${process.measured ? ', measured on a coupon' : ''}`,
    ],
    ['disc', `${disc.code.family}, ${disc.code.positions} positions, ${showNumber(diameterMm, 2)} mm`],
    ['resistor', head.marks ? 'none' : `${showNumber(levels.resistorOhm, 0)} ohm`],
    ['line format', instrument.controller.format],
  ];
  return rows.map(([what, value]) => ({ what, value, by: 'designed' }));
}

function provedRows({ proof }: TestedDesign): TestedRow[] {
  const { builds } = proof;
  const share = `${showNumber(100 * builds.yield.value, 1)} % of ${builds.builds} virtual builds (seed ${builds.seed})`;
  return [
    { what: 'verdict of the proof', value: proof.verdict, by: 'proved' },
    { what: 'meet the need', value: share, by: 'proved' },
  ];
}

/** From the table in the instrument file, where no certificate is at hand. */
function tableRows({ asBuilt, need }: Instrument): TestedRow[] {
  if (!asBuilt) return [];
  const widest = asBuilt.positions.reduce((most, { halfWidthDeg }) => Math.max(most, halfWidthDeg), 0);
  const rows: [string, string][] = [
    ['turned by hand', asBuilt.recordedAt],
    ['table', asBuilt.tableHash],
    ['positions that were seen', `${asBuilt.positions.length} of ${need.positions}`],
    ['half-width of the widest word', showDegrees(Number(widest.toFixed(2)))],
  ];
  return rows.map(([what, value]) => ({ what, value, by: 'measured' }));
}

/**
 * With what the design was tried, and what came out.
 *
 * @param certificate - Of the finished build; `null` where there is none.
 * @returns Rows: designed, proved, measured.
 * @check src/core/publish/publishKit.test.ts
 */
export function testedWith(design: TestedDesign, certificate: CertificateFigures | null): TestedRow[] {
  const certified = (certificate?.rows ?? []).map(({ figure, found }): TestedRow => ({
    what: figure,
    value: found,
    by: 'measured',
  }));
  return [...designedRows(design), ...provedRows(design), ...tableRows(design.instrument), ...certified];
}
