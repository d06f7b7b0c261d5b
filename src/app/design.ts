import { boardNamed, type Board } from '../core/boards/index.ts';
import { staggeredCode, type CodeTable } from '../core/codes/index.ts';
import { planDisc, type DiscPlan, type RibCost } from '../core/disc/index.ts';
import { BrokenPromise, VanewrightError, type Problem } from '../core/error/index.ts';
import { planHead, ribMargin, type HeadPlan } from '../core/head/index.ts';
import { INSTRUMENT_FILE_MOST_BYTES, readInstrument, type Instrument } from '../core/instrument/index.ts';
import { lineCharsAtMost } from '../core/record/index.ts';
import { correctedDisc } from '../core/proof/index.ts';
import type { InstrumentFiles } from '../ports/index.ts';
import { chosenCode } from './chosenCode.ts';

/** One instrument file carried through code, disc and head: the model all results are made from. */
export interface Design {
  readonly instrument: Instrument;
  readonly code: CodeTable;
  readonly disc: DiscPlan;
  readonly head: HeadPlan;
  /** The same problem with its field path turned into a place in the file. */
  placed(problem: Problem): Problem;
}

/** Runs work whose problems name fields, and gives those problems their place in the file. */
export async function inPlace<T>(
  placed: (problem: Problem) => Problem,
  work: () => T | Promise<T>,
): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof VanewrightError)) throw error;
    const [first, ...rest] = error.problems.map(placed);
    throw new VanewrightError([first!, ...rest]);
  }
}

/** What a head would lose by a rib; the board's name is checked when the file is read. */
function ribCostOf({ head: spec, circuit, controller }: Instrument): RibCost {
  return ribMargin({ spec, circuit, board: boardOf(controller.board) });
}

/** The board of that name. */
function boardOf(name: string): Board {
  const board = boardNamed(name);
  if (!board) throw new BrokenPromise(`The reader let through a board that does not exist.`);
  return board;
}

/** Code and disc, every second channel beside its neighbours where the maker asks for room between them. */
function codeOnDisc(instrument: Instrument, inLine: CodeTable): Pick<Design, 'code' | 'disc'> {
  const { disc: spec, head } = instrument;
  const ribCost = ribCostOf(instrument);
  const disc = planDisc(inLine, spec, ribCost);
  if (!head.staggerDeg) return { code: inLine, disc };
  const radiusOf = (channel: number): number => disc.tracks[inLine.channels[channel]!.track]!.midRadiusMm;
  const inwardOut = [...inLine.channels.keys()].sort((a, b) => radiusOf(a) - radiusOf(b));
  const code = staggeredCode(inLine, inwardOut, head.staggerDeg);
  return { code, disc: planDisc(code, spec, ribCost) };
}

/** Design of an instrument that has been read. @throws VanewrightError when any step refuses it. */
function designOf(instrument: Instrument, inLine: CodeTable): Omit<Design, 'placed'> {
  const { code, disc } = codeOnDisc(instrument, inLine);
  const board = boardOf(instrument.controller.board);
  const rate = {
    baud: instrument.controller.baud,
    lineChars: lineCharsAtMost(
      code.channels.length,
      2 ** board.converterBits - 1,
      instrument.head.detector.kind === 'colour-sensor' ? 3 : 1,
    ),
    turnRateDegPerS: instrument.need.turnRateDegPerS,
  };
  const headOver = (plan: DiscPlan): HeadPlan =>
    planHead(plan, instrument.head, instrument.circuit, board, rate);
  const head = headOver(disc);
  if (instrument.head.edgeCorrection !== 'drawn') return { instrument, code, disc, head };
  const corrected = planDisc(code, correctedDisc(head), ribCostOf(instrument));
  return { instrument, code, disc: corrected, head: headOver(corrected) };
}

/** An instrument file with its code, before anything is laid out. */
interface ReadCode {
  readonly instrument: Instrument;
  readonly code: CodeTable;
  placed(problem: Problem): Problem;
}

/** Reads an instrument file and builds its code. @throws VanewrightError, each problem with its place. */
export async function readCode(files: InstrumentFiles, path: string): Promise<ReadCode> {
  const text = await files.readText(path, INSTRUMENT_FILE_MOST_BYTES);
  const { instrument, placeOf } = readInstrument(text, path);
  // A problem of another file, such as the maker's own words, names its line itself.
  const placed = (problem: Problem): Problem =>
    problem.where.includes(':') ? problem : { ...problem, where: placeOf(problem.where) };
  return { instrument, placed, code: await inPlace(placed, () => chosenCode(files, path, instrument)) };
}

/**
 * Reads an instrument file and plans everything that is drawn from it.
 *
 * @throws VanewrightError with every problem of the first step that has any, each with its place in the file.
 */
export async function readDesign(files: InstrumentFiles, path: string): Promise<Design> {
  const { instrument, code, placed } = await readCode(files, path);
  return { ...(await inPlace(placed, () => designOf(instrument, code))), placed };
}
