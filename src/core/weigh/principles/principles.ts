import type { Principle } from '../principle.ts';
import { colourDisc } from './colourDisc.ts';
import { continuousPotentiometer } from './continuousPotentiometer.ts';
import { countingWheel } from './countingWheel.ts';
import { focusedBeamDisc } from './focusedBeamDisc.ts';
import { indexedWheel } from './indexedWheel.ts';
import { magneticChip } from './magneticChip.ts';
import { multiTurnTrimmer } from './multiTurnTrimmer.ts';
import { roomLightDisc } from './roomLightDisc.ts';
import { singleTurnPotentiometer } from './singleTurnPotentiometer.ts';
import { switchRing } from './switchRing.ts';

/** Every way of sensing that is compared; adding one is adding a file and a line. */
export const principles: readonly Principle[] = [
  singleTurnPotentiometer,
  continuousPotentiometer,
  multiTurnTrimmer,
  countingWheel,
  indexedWheel,
  switchRing,
  magneticChip,
  roomLightDisc,
  focusedBeamDisc,
  colourDisc,
];
