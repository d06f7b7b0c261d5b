import { Chatter } from './channels/chatter.ts';
import { IllegalWords } from './channels/illegalWords.ts';
import { StuckChannel } from './channels/stuckChannel.ts';
import { TurningChatter } from './channels/turningChatter.ts';
import { BearingWear } from './cups/bearingWear.ts';
import { ContactBounce } from './cups/contactBounce.ts';
import { SeizedCups } from './cups/seizedCups.ts';
import type { Detector } from './detector.ts';
import { FrozenVane } from './motion/frozenVane.ts';
import { SkippedSteps } from './motion/skippedSteps.ts';
import type { FaultSetting } from './setting.ts';
import { ClockJump } from './supply/clockJump.ts';
import { SlippedClamp } from './motion/slippedClamp.ts';
import { DirtyWords } from './channels/dirtyWords.ts';
import { LightWatch } from './light/lightWatch.ts';
import { LostPower } from './supply/lostPower.ts';

/** One detector for each fault that this instrument can have. */
export function detectorsFor(setting: FaultSetting): Detector[] {
  const { code, limitDegPerS, hasCups, place } = setting;
  return [
    new StuckChannel(code),
    new IllegalWords(code),
    new Chatter(code),
    new TurningChatter(code),
    new FrozenVane(code.positions),
    new SkippedSteps(code.positions, limitDegPerS),
    ...(hasCups ? [new SeizedCups(), new BearingWear(), new ContactBounce()] : []),
    new DirtyWords(code),
    new SlippedClamp(),
    ...(setting.lights.length > 0 ? [new LightWatch(setting)] : []),
    new LostPower(place),
    new ClockJump(),
  ];
}
