import type { Level } from '../../codes/index.ts';
import {
  edgeSpread,
  markReaderOf,
  signalOf,
  switchLights,
  type EdgeSpread,
  type HeadPlan,
} from '../../head/index.ts';
import { ownThresholds } from '../turn/conditions.ts';

/** How far ahead of the spot's middle an edge stands when its channel changes. [mm] */
export interface SwitchPlaces {
  /** Halfway between both ways round: where the edge seems to be. */
  readonly biasMm: number;
  /** Half of what the two ways differ by. */
  readonly wayMm: number;
}

/** What is different about a channel, or about its light since thresholds were measured. */
export interface ChannelChange {
  readonly part?: number;
  readonly resistor?: number;
  readonly thresholdCounts?: number;
  readonly drift?: number;
  readonly addedLight?: number;
}

/** The spread of an edge on a channel's track. */
export function spreadOf({ spec }: HeadPlan, radiusMm: number): EdgeSpread {
  return edgeSpread(spec.aperture, { radiusMm, penumbra: spec.penumbra ?? null });
}

/**
 * Where the edge at which a window begins switches a channel; the edge at its end mirrors it.
 *
 * @param radiusMm - Of the track. [mm]
 * @param change - What is different from the drawing.
 * @returns Places; of three marks those of the pair that is farthest off. [mm]
 * @source derived: T(x) = light of the threshold; x > 0 for a threshold below half light, which widens every window by 2x.
 * @check src/core/proof/budget/errorBudget.test.ts
 */
export function switchPlaces(head: HeadPlan, radiusMm: number, change: ChannelChange = {}): SwitchPlaces {
  const spread = spreadOf(head, radiusMm);
  if (head.marks !== null) return markPlaces(head, spread);
  const { part = 1, resistor = 1, thresholdCounts = 0, drift = 1, addedLight = 0 } = change;
  const signal = signalOf(head.spec.detector, head.levels.resistorOhm, head.circuit.sensorTo, head.board);
  const { lowCounts, highCounts } = ownThresholds(head, signal, part, resistor);
  const moved = { lowCounts: lowCounts + thresholdCounts, highCounts: highCounts + thresholdCounts };
  const lights = switchLights(moved, signal, part * drift, resistor);
  return placesBetween(
    spread.edgeAt(lights.risingLight - addedLight),
    spread.edgeAt(lights.fallingLight - addedLight),
  );
}

function placesBetween(rising: number, falling: number): SwitchPlaces {
  return { biasMm: (rising + falling) / 2, wayMm: Math.abs(falling - rising) / 2 };
}

const PAIRS: readonly (readonly [Level, Level])[] = [
  [0, 1],
  [0, 2],
  [1, 2],
];

function markPlaces({ marks, spec, circuit, board, levels }: HeadPlan, spread: EdgeSpread): SwitchPlaces {
  const { detector } = spec;
  const reader = markReaderOf({ detector, circuit, board, resistorOhm: levels.resistorOhm, plan: marks! });
  const all = PAIRS.map(([from, to]) =>
    placesBetween(
      spread.edgeAt(reader.changes(from, to).at(-1)?.share ?? 1),
      spread.edgeAt(1 - (reader.changes(to, from).at(-1)?.share ?? 1)),
    ),
  );
  return {
    biasMm: all.map(({ biasMm }) => biasMm).sort((a, b) => Math.abs(b) - Math.abs(a))[0]!,
    wayMm: Math.max(...all.map(({ wayMm }) => wayMm)),
  };
}
