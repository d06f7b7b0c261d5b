import type { CodeTable, Level } from '../../codes/index.ts';
import { showMm, showNumber } from '../../units/index.ts';
import type { DiscForm, DiscSpec } from '../discSpec.ts';
import { formOf, possibleForms } from '../form.ts';
import { drumRadiusMm, stripPoint } from '../layout/layStrip.ts';
import { bandWidthMm, trackRadiiMm } from '../layout/layTracks.ts';
import { isWindow, stretchesWhere } from '../layout/windows.ts';
import { discPlace, stripPlace, type FaultPlace, type PlacedProblem } from './fault.ts';
import { levelCountOf } from '../pieces/materialGrid.ts';

/** Least thickness of a floor, of what stands on it and of an inlay. [mm] @source common practice: two layers of 0.2 mm. */
const LEAST_LAYER_MM = 0.4;

/** Middle of the first mark of each track that shows such a level; none where the tracks have no room. */
function firstMarks(isMeant: (level: Level) => boolean, code: CodeTable, spec: DiscSpec): FaultPlace[] {
  if (bandWidthMm(code.tracks.length, spec) <= 0) return [];
  return trackRadiiMm(code.tracks.length, spec).flatMap(([inner, outer], track) =>
    stretchesWhere(code.tracks[track]!, isMeant)
      .slice(0, 1)
      .map(({ fromDeg, toDeg }) => {
        const [radius, angle] = [(inner + outer) / 2, (fromDeg + toDeg) / 2];
        return spec.strip
          ? stripPlace(stripPoint(spec, spec.strip, radius, angle))
          : discPlace(radius, angle);
      }),
  );
}

/** Part of a millimetre in which a level shows and stays whole. */
function layerProblem(
  field: string,
  what: string,
  layerMm: number,
  { thicknessMm }: DiscSpec,
  at: readonly FaultPlace[],
): PlacedProblem[] {
  const most = thicknessMm - LEAST_LAYER_MM;
  if (layerMm >= LEAST_LAYER_MM && layerMm <= most) return [];
  const isPossible = most >= LEAST_LAYER_MM;
  return [
    {
      code: 'disc/layer-not-in-thickness',
      what,
      where: field,
      got: `${showMm(layerMm)} of a disc ${showMm(thicknessMm)} thick`,
      allowed: isPossible
        ? `${showMm(LEAST_LAYER_MM)} to ${showMm(most)}`
        : 'nothing: the disc is too thin for two layers',
      fix: isPossible
        ? `Set ${field} to ${showNumber(thicknessMm / 2, 2)}.`
        : `Set disc.thicknessMm to ${showNumber(4 * LEAST_LAYER_MM, 1)} and ${field} to ${showNumber(2 * LEAST_LAYER_MM, 1)}.`,
      at,
    },
  ];
}

function processProblem({ process, ...spec }: DiscSpec): PlacedProblem[] {
  const { kind } = formOf({ process, ...spec });
  const possible = possibleForms(process.kind);
  if (possible.includes(kind)) return [];
  return [
    {
      code: 'disc/form-not-for-process',
      what: 'The process cannot make a disc of this form.',
      where: 'disc.form.kind',
      got: `${kind} by ${process.kind}`,
      allowed: `${possible.join(', ')} (${process.kind})`,
      fix: `Set disc.form.kind to ${possible[0]}, or take another process.`,
      at: [],
    },
  ];
}

/** What the form shows two levels with; three need a colour each. */
function levelProblem(code: CodeTable, form: DiscForm, spec: DiscSpec): PlacedProblem[] {
  if (levelCountOf({ code }) === 2 || form.kind === 'inlay') return [];
  if (form.kind === 'overlay' && form.colours) return [];
  return [
    {
      code: 'disc/levels-need-colours',
      what: 'The code has three levels, but a disc of this form shows only two: window and land.',
      where: 'disc.form',
      got: `${form.kind}, 3 levels`,
      allowed: 'a form with a colour for each level',
      fix: "Set disc.form to { kind: overlay, colours: ['#ffffff', '#1f5fbf', '#000000'] } with a colour-print process, or to an inlay of three colours.",
      at: firstMarks((level) => level === 2, code, spec),
    },
  ];
}

function coloursOf(form: DiscForm): readonly string[] | undefined {
  return form.kind === 'inlay' || form.kind === 'overlay' ? form.colours : undefined;
}

function colourProblems(code: CodeTable, form: DiscForm, spec: DiscSpec): PlacedProblem[] {
  const colours = coloursOf(form);
  if (!colours) return [];
  const { process } = spec;
  const levels = levelCountOf({ code });
  const problems: PlacedProblem[] = [];
  const distinct = new Set(colours.slice(0, levels).map((colour) => colour.toLowerCase())).size;
  if (colours.length < levels || distinct < levels) {
    problems.push({
      code: 'disc/colours-missing',
      what: 'Every level of the code needs a colour of its own.',
      where: 'disc.form.colours',
      got: `${distinct} different ${distinct === 1 ? 'colour' : 'colours'}`,
      allowed: `${levels} colours, level 0 first`,
      fix: `Set disc.form.colours to ${JSON.stringify(['#ffffff', '#000000', '#1f5fbf'].slice(0, levels))}.`,
      at: firstMarks((level) => level >= distinct, code, spec),
    });
  }
  const can = process.colourCount;
  if (can !== undefined && levels > can) {
    problems.push({
      code: 'disc/colours-beyond-process',
      what: 'The disc needs more materials or inks than the process can lay in one part.',
      where: 'disc.process.colourCount',
      got: `${levels} colours`,
      allowed: `at most ${can}`,
      fix: `Take a code of ${Math.min(can, 2)} levels, or a printer of ${levels} colours with disc.process.colourCount: ${levels}.`,
      at: firstMarks((level) => level >= can, code, spec),
    });
  }
  return problems;
}

function stripProblems(code: CodeTable, spec: DiscSpec): PlacedProblem[] {
  const { strip, webMm, rimMm } = spec;
  if (!strip) return [];
  const problems: PlacedProblem[] = [];
  const band = bandWidthMm(code.tracks.length, spec);
  if (band > 0 && drumRadiusMm(strip) <= band) {
    const least = Math.ceil(2 * Math.PI * band) + 1;
    problems.push({
      code: 'disc/strip-too-short',
      what: 'One turn of the strip is shorter than its tracks are wide.',
      where: 'disc.strip.turnLengthMm',
      got: `${showMm(strip.turnLengthMm)} for tracks ${showMm(band)} wide`,
      allowed: `${least} mm or more`,
      fix: `Set disc.strip.turnLengthMm to ${least}.`,
      at: [0, strip.turnLengthMm].map((xMm) => stripPlace({ xMm, yMm: rimMm + band / 2 })),
    });
  }
  if (formOf(spec).kind === 'through-cut' && (webMm === 0 || rimMm === 0)) {
    const [field, size] =
      webMm === 0 ? ['disc.webMm', spec.process.minWebMm] : ['disc.rimMm', 2 * spec.process.minWebMm];
    problems.push({
      code: 'disc/strip-needs-webs',
      what: 'A strip with holes is held together by its webs and by a rim along both edges.',
      where: field as string,
      got: '0 mm',
      allowed: 'above 0 mm',
      fix: `Set ${field} to ${showNumber(size as number, 2)}.`,
      at: [stripPlace({ xMm: strip.turnLengthMm / 2, yMm: webMm === 0 ? rimMm + band : 0 })],
    });
  }
  return problems;
}

/**
 * What is wrong with the form of a disc: what no size of its pattern would mend.
 *
 * @param code - Code to be laid on the disc.
 * @param spec - The disc as asked for, with usable sizes. [mm]
 * @returns Problems, each with its own fix. n ≥ 0
 */
export function formProblems(code: CodeTable, spec: DiscSpec): PlacedProblem[] {
  const form = formOf(spec);
  const layers =
    form.kind === 'relief'
      ? layerProblem(
          'disc.form.floorMm',
          'The floor of the relief, or what stands on it, is too thin.',
          form.floorMm,
          spec,
          firstMarks((level) => isWindow(level, spec), code, spec),
        )
      : form.kind === 'inlay'
        ? layerProblem(
            'disc.form.depthMm',
            'The inlay, or what is left below it, is too thin.',
            form.depthMm,
            spec,
            firstMarks((level) => isWindow(level, spec), code, spec),
          )
        : [];
  return [
    ...processProblem(spec),
    ...levelProblem(code, form, spec),
    ...colourProblems(code, form, spec),
    ...layers,
    ...stripProblems(code, spec),
  ];
}

/** The same disc in the usual form of its process, so that the rest of it can be looked at. */
export function withUsualForm(spec: DiscSpec): DiscSpec {
  const plain: DiscSpec & { form?: DiscForm; strip?: DiscSpec['strip'] } = { ...spec };
  delete plain.form;
  delete plain.strip;
  return plain;
}
