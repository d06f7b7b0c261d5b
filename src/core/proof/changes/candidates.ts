import { buildCode, families, type CodeTable } from '../../codes/index.ts';
import { planDisc, type DiscPlan } from '../../disc/index.ts';
import { detectorDefaults, planHead, ribMargin, type HeadPlan } from '../../head/index.ts';
import { jumpText } from '../rival.ts';
import { editsOf, type Candidate, type Edit, type Fields, type Make } from './candidate.ts';
import { daylightCandidates } from './daylightCandidates.ts';
import { correctedDisc } from '../budget/edgeCorrection.ts';
import { switchPlaces } from '../budget/switchShifts.ts';
import { showDegrees, showMm, showNumber } from '../../units/index.ts';
import type { Need } from '../../instrument/index.ts';

/** Everything that is worth trying on a design, whether or not it helps. */
export function candidates(head: HeadPlan, need: Need): Candidate[] {
  const candidate = (title: string, how: string, fields: Fields, edit: Edit): Candidate => ({
    ...{ title, how, edits: editsOf(fields) },
    plan: () => edited(head, edit),
  });
  return [
    ...codeCandidates(head, need, candidate),
    ...opticalCandidates(head, candidate),
    ...daylightCandidates(head, candidate),
    ...circuitCandidates(head, candidate),
    ...makingCandidates(head, candidate),
  ];
}

function edited(head: HeadPlan, { code, disc = {}, spec = {}, circuit = {} }: Edit): HeadPlan {
  const table: CodeTable = code ? buildCode(code.family, code.positions) : head.disc.code;
  const options = code ? { code: code.family, codeOptions: {} } : {};
  const { board, rate } = head;
  const changed = { spec: { ...head.asked, ...spec }, circuit: { ...head.circuit, ...circuit }, board };
  // Ribs stand where this light leaves them: another spot may have them elsewhere.
  const isSameDisc = !code && Object.keys(disc).length === 0 && head.disc.ribs.length === 0;
  const plan: DiscPlan = isSameDisc
    ? head.disc
    : planDisc(table, { ...head.disc.spec, ...options, ...disc }, ribMargin(changed));
  return planHead(plan, changed.spec, changed.circuit, board, rate);
}

/** A code of the family's own choosing for that count; a count takes the place of a wished resolution. */
function codeFields(family: string, positions: number): Fields {
  return {
    'disc.code': family,
    'disc.codeOptions': {},
    'need.positions': positions,
    'need.resolutionDeg': undefined,
  };
}

function codeCandidates({ disc: { code } }: HeadPlan, need: Need, make: Make): Candidate[] {
  const found: Candidate[] = [];
  const enough = 2 * Math.ceil(90 / need.accuracyDeg) + 2;
  const gray = families.some(({ name }) => name === 'reflected-gray');
  if (gray && jumpText(code) !== null) {
    const positions = code.positions + (code.positions % 2);
    found.push(
      make(
        'Change one channel a step',
        `Set disc.code to reflected-gray${positions === code.positions ? '' : ` and need.positions to ${positions}`}.`,
        codeFields('reflected-gray', positions),
        {
          code: { family: 'reflected-gray', positions },
        },
      ),
    );
  }
  if (need.accuracyDeg < 180 / code.positions && enough <= 4096) {
    const family = code.family === 'natural-binary' ? 'reflected-gray' : code.family;
    found.push(
      make(
        'Make more, smaller steps',
        `Set need.positions to ${enough}, steps of ${showDegrees(360 / enough)}.`,
        codeFields(family, enough),
        {
          code: { family, positions: enough },
        },
      ),
    );
  }
  return found;
}

/** Bias of an edge below which drawing for it brings nothing. [mm] */
const LEAST_BIAS_MM = 0.02;

function opticalCandidates(head: HeadPlan, make: Make): Candidate[] {
  const { spec, marks } = head;
  const found: Candidate[] = [];
  const { detector } = spec;
  if (detector.kind === 'photoresistor') {
    found.push(
      make(
        'Use a sensor that is linear and quick',
        'Set head.detector to { kind: phototransistor } with an infrared LED, and leave circuit.resistorOhm out.',
        {
          'head.detector': { kind: 'phototransistor' },
          'head.light': { kind: 'led', currentMa: 10, wavelengthNm: 950 },
          'circuit.resistorOhm': null,
        },
        {
          spec: {
            detector: detectorDefaults.phototransistor,
            light: { kind: 'led', currentMa: 10, wavelengthNm: 950 },
          },
          circuit: { resistorOhm: null },
        },
      ),
    );
  }
  const { biasMm } = switchPlaces(head, head.channels[0]!.radiusMm);
  if (Math.abs(biasMm) > LEAST_BIAS_MM && spec.edgeCorrection !== 'drawn' && marks === null) {
    const { process, drawn, notch } = correctedDisc(head);
    found.push(
      make(
        'Draw edges for this sensor',
        'Set head.edgeCorrection to drawn.',
        { 'head.edgeCorrection': 'drawn' },
        {
          disc: { process, notch, ...(drawn ? { drawn } : {}) },
          spec: { edgeCorrection: 'drawn' },
        },
      ),
    );
  }
  return [...found, ...spotCandidates(head, make)];
}

function spotCandidates({ spec: { aperture }, disc, marks }: HeadPlan, make: Make): Candidate[] {
  const found: Candidate[] = [];
  const half = Number(
    (aperture.shape === 'slit'
      ? aperture.widthMm
      : aperture.shape === 'round'
        ? aperture.diameterMm
        : aperture.radiusMm) / 2,
  );
  const [field, narrow] =
    aperture.shape === 'slit'
      ? (['widthMm', { ...aperture, widthMm: half }] as const)
      : aperture.shape === 'round'
        ? (['diameterMm', { ...aperture, diameterMm: half }] as const)
        : (['radiusMm', { ...aperture, radiusMm: half }] as const);
  found.push(
    make(
      'Narrow the spot',
      `Set head.aperture.${field} to ${showNumber(half, 3)}.`,
      { [`head.aperture.${field}`]: half },
      {
        spec: { aperture: narrow },
      },
    ),
  );
  if (aperture.shape === 'slit') {
    const lengthMm = Number((aperture.lengthMm / 2).toFixed(2));
    found.push(
      make(
        'Shorten the slit',
        `Set head.aperture.lengthMm to ${lengthMm}.`,
        { 'head.aperture.lengthMm': lengthMm },
        {
          spec: { aperture: { ...aperture, lengthMm } },
        },
      ),
    );
  }
  const bigger = Math.ceil(1.5 * disc.spec.diameterMm);
  if (marks === null || bigger <= 600) {
    const hubDiameterMm = Number((disc.spec.hubDiameterMm + bigger - disc.spec.diameterMm).toFixed(1));
    found.push(
      make(
        'Make the disc larger',
        `Set disc.diameterMm to ${bigger} and disc.hubDiameterMm to ${hubDiameterMm}.`,
        { 'disc.diameterMm': bigger, 'disc.hubDiameterMm': hubDiameterMm },
        {
          disc: { diameterMm: bigger, hubDiameterMm },
        },
      ),
    );
  }
  return found;
}

function circuitCandidates({ circuit }: HeadPlan, make: Make): Candidate[] {
  const found: Candidate[] = [];
  if (circuit.thresholds === 'shared') {
    found.push(
      make(
        'Measure thresholds on each channel',
        'Set circuit.thresholds to per-channel.',
        { 'circuit.thresholds': 'per-channel' },
        {
          circuit: { thresholds: 'per-channel' },
        },
      ),
    );
  }
  if (circuit.resistorOhm !== null) {
    found.push(
      make(
        'Take the recommended resistor',
        'Leave circuit.resistorOhm out.',
        { 'circuit.resistorOhm': null },
        {
          circuit: { resistorOhm: null },
        },
      ),
    );
  }
  if (circuit.hysteresisCounts !== null) {
    found.push(
      make(
        'Take the recommended hysteresis',
        'Leave circuit.hysteresisCounts out.',
        { 'circuit.hysteresisCounts': null },
        {
          circuit: { hysteresisCounts: null },
        },
      ),
    );
  }
  return found;
}

function makingCandidates(head: HeadPlan, make: Make): Candidate[] {
  const { spec, disc } = head;
  const { process } = disc.spec;
  const halfOf = (value: number): number => Number((value / 2).toFixed(3));
  const found: Candidate[] = [];
  if (process.windowGrowthMm !== 0) {
    found.push(
      make(
        'Let drawings make up for the tool',
        `Set disc.allowance to drawn, so that windows come out as drawn and not ${showMm(Math.abs(process.windowGrowthMm))} ${process.windowGrowthMm > 0 ? 'wider' : 'narrower'}.`,
        { 'disc.allowance': 'drawn' },
        { disc: { process: { ...process, windowGrowthMm: 0 } } },
      ),
    );
  }
  if (process.boreSdMm > 0) {
    const boreSdMm = halfOf(process.boreSdMm);
    found.push(
      make(
        'Bore the disc truer',
        `Turn it on its shaft against a fixed point before gluing: disc.process.boreSdMm ${boreSdMm}.`,
        { 'disc.process.boreSdMm': boreSdMm },
        {
          disc: { process: { ...process, boreSdMm } },
        },
      ),
    );
  }
  if (process.edgeSdMm > 0) {
    const edgeSdMm = halfOf(process.edgeSdMm);
    found.push(
      make(
        'Use a finer process',
        `Such as film or a laser: disc.process.edgeSdMm ${edgeSdMm}.`,
        { 'disc.process.edgeSdMm': edgeSdMm },
        {
          disc: { process: { ...process, edgeSdMm } },
        },
      ),
    );
  }
  if (spec.tangentialSdMm > 0) {
    const tangentialSdMm = halfOf(spec.tangentialSdMm);
    const radialSdMm = halfOf(spec.radialSdMm);
    found.push(
      make(
        'Seat the sensors truer',
        `Drill all seats in one piece with the apertures: head.tangentialSdMm ${tangentialSdMm}.`,
        { 'head.tangentialSdMm': tangentialSdMm, 'head.radialSdMm': radialSdMm },
        {
          spec: { tangentialSdMm, radialSdMm },
        },
      ),
    );
  }
  return found;
}
