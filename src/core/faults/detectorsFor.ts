import { Chatter } from './channels/chatter.ts';
import { IllegalWords } from './channels/illegalWords.ts';
import { StuckChannel } from './channels/stuckChannel.ts';
import { BearingWear } from './cups/bearingWear.ts';
import { ContactBounce } from './cups/contactBounce.ts';
import { SeizedCups } from './cups/seizedCups.ts';
import type { Detector } from './detector.ts';
import { FrozenVane } from './motion/frozenVane.ts';
import { SkippedSteps } from './motion/skippedSteps.ts';
import type { FaultSetting } from './setting.ts';
import { ClockJump } from './supply/clockJump.ts';
import { LostPower } from './supply/lostPower.ts';

/** One detector for each fault that this instrument can have. */
export function detectorsFor({ code, limitDegPerS, hasCups, place }: FaultSetting): Detector[] {
  return [
    new StuckChannel(code),
    new IllegalWords(code),
    new Chatter(code),
    new FrozenVane(code.positions),
    new SkippedSteps(code.positions, limitDegPerS),
    ...(hasCups ? [new SeizedCups(), new BearingWear(), new ContactBounce()] : []),
    new LostPower(place),
    new ClockJump(),
  ];
}
