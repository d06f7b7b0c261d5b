import { boardNamed } from '../../src/core/boards/index.ts';
import { buildCode, type CodeTable } from '../../src/core/codes/index.ts';
import type { HeadPlan } from '../../src/core/head/index.ts';
import type { Instrument } from '../../src/core/instrument/index.ts';
import { lineCharsAtMost, parseLine, type Line } from '../../src/core/record/index.ts';
import type { AvrChip } from './avrChip.ts';

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

const SLOW_DETECTOR: Instrument['head']['detector'] = {
  kind: 'photoresistor',
  litOhm: 2_000,
  darkOhm: 200_000,
  gamma: 0.7,
  riseMs: 20,
  fallMs: 30,
  spread: 0.1,
};

/** Nothing is asked of the supply. */
const NO_POWER: Instrument['power'] = {
  sleep: 'awake',
  battery: null,
  regulator: 'linear',
  boardMa: null,
  sunHoursPerDay: null,
  darkDays: 5,
};

/** Cups of two pulses a turn, not calibrated, on that pin. */
export function cupsOn(pin: string, quietUs = 1500): NonNullable<Instrument['cups']> {
  return { pulsesPerTurn: 2, pin, quietUs, runPerPulseM: null, startSpeedMPerS: 0 };
}

/** Invented: the vane on a boathouse jetty. Lines come every 2 ms so that little time need be simulated. */
export function jettyInstrument(wishes: VaneWishes = {}): Instrument {
  return {
    name: wishes.name ?? 'Boathouse jetty',
    need: {
      positions: wishes.positions ?? 32,
      accuracyDeg: 11.25,
      turnRateDegPerS: wishes.turnRateDegPerS ?? 375,
      turnRangeDeg: 360,
      mustSurvivePowerLoss: true,
      wantedYield: 0.9,
    },
    disc: {
      code: 'reflected-gray',
      codeOptions: {},
      diameterMm: 80,
      bore: { shape: 'round', diameterMm: 5 },
      hubDiameterMm: 16,
      thicknessMm: 2,
      webMm: 0.8,
      rimMm: 2,
      finest: 'outside',
      windowLevel: wishes.windowLevel ?? 1,
      notch: { widthMm: 2, depthMm: 1 },
      process: {
        kind: 'fdm',
        minWindowMm: 0.8,
        minLandMm: 0.8,
        minWebMm: 0.8,
        edgeSdMm: 0.1,
        windowGrowthMm: 0,
        boreSdMm: 0.1,
      },
    },
    head: {
      detector: wishes.detector ?? SLOW_DETECTOR,
      light: { kind: 'led', currentMa: 10, wavelengthNm: 630 },
      aperture: { shape: 'slit', widthMm: 1, lengthMm: 3 },
      tangentialSdMm: 0.1,
      radialSdMm: 0.1,
      patternedFace: wishes.patternedFace ?? 'up',
    },
    circuit: {
      input: wishes.input ?? 'direct',
      emitters: wishes.emitters ?? 'steady',
      resistorOhm: null,
      resistorTolerancePercent: 1,
      sensorTo: wishes.sensorTo ?? 'supply',
      thresholds: 'per-channel',
      hysteresisCounts: null,
      noiseCounts: 1,
    },
    controller: {
      board: wishes.board ?? 'atmega328p',
      channelPins: wishes.channelPins ?? null,
      baud: wishes.baud ?? 500_000,
      format: wishes.format ?? 'text',
      lineIntervalMs: wishes.lineIntervalMs ?? 2,
    },
    cups: wishes.cups === undefined ? cupsOn(wishes.board === 'atmega32u4' ? 'D3' : 'D2') : wishes.cups,
    power: { ...NO_POWER, sleep: wishes.sleep ?? 'awake' },
    site: {
      place: wishes.place ?? 'an invented jetty',
      mastHeightM: 4,
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
      riseLagMs: 2,
      fallLagMs: 72,
    },
    speed: { loopMs: 1, lagMs: 72, limitDegPerS: 375 },
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
