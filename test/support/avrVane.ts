import { boardNamed } from '../../src/core/boards/index.ts';
import { buildCode, type CodeTable } from '../../src/core/codes/index.ts';
import { LADDER_DEFAULT, ladderPlan, type HeadPlan } from '../../src/core/head/index.ts';
import { readInstrument, type Instrument } from '../../src/core/instrument/index.ts';
import {
  lineCharsAtMost,
  parseLine,
  parseStatus,
  type Line,
  type StatusLine,
} from '../../src/core/record/index.ts';
import type { AvrChip } from './avrChip.ts';

/** A sensor that follows a light lit for one read. */
export const FAST_SENSOR = {
  kind: 'phototransistor',
  litMa: 0.5,
  darkMa: 0.01,
  saturationV: 0.4,
  riseMs: 0.015,
  fallMs: 0.015,
  spread: 0.2,
} as const;

/** What a test may ask to be different about the vane on the jetty; the rest stays. */
export interface VaneWishes {
  readonly name?: string;
  readonly place?: string;
  readonly positions?: number;
  /** In place of reflected Gray. */
  readonly code?: CodeTable;
  readonly sensorTo?: 'supply' | 'ground';
  readonly windowLevel?: 0 | 1;
  readonly patternedFace?: 'up' | 'down';
  readonly northOffsetDeg?: number;
  readonly sourceOhm?: number;
  readonly gate?: 'comparator' | 'schmitt';
  readonly ladderKind?: 'r-2r' | 'weighted';
  readonly turnRateDegPerS?: number;
  readonly cups?: Instrument['cups'];
  readonly channelPins?: readonly string[] | null;
  readonly baud?: number;
  readonly lineIntervalMs?: number;
  readonly input?: Instrument['circuit']['input'];
  readonly emitters?: Instrument['circuit']['emitters'];
  readonly board?: string;
  readonly format?: Instrument['controller']['format'];
  readonly sleep?: Instrument['power']['sleep'];
  readonly detector?: Instrument['head']['detector'];
  readonly asBuilt?: Instrument['asBuilt'];
}

/** Thresholds and levels of the tests: a divider of 20 kohm with 2 kohm lit and 200 kohm dark. [counts] */
export const LIT_COUNTS = 930;
export const DARK_COUNTS = 93;
export const LOW_COUNTS = 480;
export const HIGH_COUNTS = 544;

/** Cups of two pulses a turn, not calibrated, on that pin. */
export function cupsOn(pin: string, quietUs = 1500): NonNullable<Instrument['cups']> {
  return { pulsesPerTurn: 2, pin, quietUs, runPerPulseM: null, startSpeedMPerS: 0 };
}

/** Invented: the vane on a boathouse jetty, with the defaults of the file for everything the tests do not ask for. */
const { instrument: JETTY } = readInstrument(
  `vanewright: 1
name: Boathouse jetty
need: { positions: 32, accuracyDeg: 11.25, turnRateDegPerS: 375, wantedYield: 0.9 }
disc: { diameterMm: 80, hubDiameterMm: 16, webMm: 0.8, rimMm: 2, process: { kind: fdm } }
head: { light: { kind: led, wavelengthNm: 630 } }
circuit: { resistorTolerancePercent: 1 }
site: { place: an invented jetty, mastHeightM: 4 }
`,
  'jetty.yaml',
);

/** The jetty vane as a test wants it. Lines come every 3 ms so that little time need be simulated. */
export function jettyInstrument(wishes: VaneWishes = {}): Instrument {
  const cups = cupsOn(wishes.board === 'atmega32u4' ? 'D3' : 'D2');
  return {
    ...JETTY,
    name: wishes.name ?? JETTY.name,
    need: {
      ...JETTY.need,
      positions: wishes.positions ?? 32,
      turnRateDegPerS: wishes.turnRateDegPerS ?? 375,
    },
    disc: { ...JETTY.disc, windowLevel: wishes.windowLevel ?? 1 },
    head: {
      ...JETTY.head,
      detector: wishes.detector ?? JETTY.head.detector,
      patternedFace: wishes.patternedFace ?? 'up',
    },
    circuit: {
      ...JETTY.circuit,
      input: wishes.input ?? 'direct',
      emitters: wishes.emitters ?? 'steady',
      sensorTo: wishes.sensorTo ?? 'supply',
      gate: wishes.gate ?? 'comparator',
      ladder: { ...LADDER_DEFAULT, kind: wishes.ladderKind ?? 'r-2r' },
    },
    controller: {
      board: wishes.board ?? 'atmega328p',
      channelPins: wishes.channelPins ?? null,
      baud: wishes.baud ?? 500_000,
      format: wishes.format ?? 'text',
      lineIntervalMs: wishes.lineIntervalMs ?? 3,
    },
    cups: wishes.cups === undefined ? cups : wishes.cups,
    power: { ...JETTY.power, sleep: wishes.sleep ?? 'awake' },
    site: {
      ...JETTY.site,
      place: wishes.place ?? JETTY.site.place,
      northOffsetDeg: wishes.northOffsetDeg ?? 0,
    },
    asBuilt: wishes.asBuilt ?? null,
  };
}

/** Head plan of that instrument with the tests' own levels, so that they know what every count means. */
export function jettyHead(instrument: Instrument, wishes: VaneWishes = {}): HeadPlan {
  const code = wishes.code ?? buildCode(instrument.disc.code, instrument.need.positions);
  const width = 2.5;
  const tracks = code.tracks.map((_, track) => ({
    track,
    innerRadiusMm: 10 + track * width,
    outerRadiusMm: 10 + (track + 1) * width,
    midRadiusMm: 10 + (track + 0.5) * width,
    windows: [],
  }));
  return {
    disc: { code, spec: instrument.disc, tracks, ribs: [] },
    asked: instrument.head,
    spec: instrument.head,
    circuit: instrument.circuit,
    board: boardNamed(instrument.controller.board)!,
    rate: {
      baud: instrument.controller.baud,
      lineChars: lineCharsAtMost(code.channels.length),
      turnRateDegPerS: instrument.need.turnRateDegPerS,
    },
    channels: code.channels.map(({ track, angleDeg }, channel) => {
      return { channel, track, angleDeg, radiusMm: tracks[track]!.midRadiusMm };
    }),
    levels: {
      resistorOhm: 20_000,
      bestResistorOhm: 20_000,
      litCounts: LIT_COUNTS,
      darkCounts: DARK_COUNTS,
      lowCounts: LOW_COUNTS,
      highCounts: HIGH_COUNTS,
      risingLight: 0.04,
      fallingLight: 0.03,
      litMarginCounts: LIT_COUNTS - HIGH_COUNTS,
      darkMarginCounts: LOW_COUNTS - DARK_COUNTS,
      litMarginSigma: LIT_COUNTS - HIGH_COUNTS,
      darkMarginSigma: LOW_COUNTS - DARK_COUNTS,
      sourceOhm: wishes.sourceOhm ?? 8_000,
      unsettled: 0,
      riseLagMs: 2,
      fallLagMs: 72,
    },
    speed: { loopMs: 1, lagMs: 72, limitDegPerS: 375 },
    marks: null,
    ladder:
      instrument.circuit.input === 'ladder'
        ? ladderPlan(instrument.circuit, boardNamed(instrument.controller.board)!, code.channels.length, 30)
        : null,
    faults: [],
    warnings: [],
  };
}

/** Puts counts on an input; the middle of the step, since the converter rounds down. */
export function setCounts(chip: AvrChip, input: number, counts: number): void {
  chip.setVolts(input, ((counts + 0.5) * 5) / 1024);
}

/** The line that a text holds. @throws with the refusal when it holds none. */
export function lineOf(text: string): Line {
  const parsed = parseLine(text);
  if (!parsed.ok) throw new Error(`${parsed.refusal.code} in "${text}": ${parsed.refusal.what}`);
  return parsed.line;
}

/** The status line that a text holds. @throws with the refusal when it holds none. */
export function statusOf(text: string): StatusLine {
  const parsed = parseStatus(text);
  if (!parsed.ok) throw new Error(`${parsed.refusal.code} in "${text}": ${parsed.refusal.what}`);
  return parsed.status;
}

/** The first line whose reading was begun after now; the longest read of all channels takes less than 1.5 ms. */
export function freshLine(chip: AvrChip, mostMs = 60): Line {
  const sinceMs = Math.floor(chip.nowUs / 1000) + 2;
  let seen = chip.lines.length - 1;
  let found: Line | null = null;
  chip.runUntil(() => {
    for (; !found && seen < chip.lines.length - 1; seen++) {
      const line = lineOf(chip.lines[seen]!);
      if (line.sinceStartMs >= sinceMs) found = line;
    }
    return found !== null;
  }, mostMs);
  return found!;
}
