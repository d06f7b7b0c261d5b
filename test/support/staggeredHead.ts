import { staggeredCode } from '../../src/core/codes/index.ts';
import { planDisc } from '../../src/core/disc/index.ts';
import type { HeadPlan } from '../../src/core/head/index.ts';

/** A head in one line, every second channel moved beside its neighbours. */
export function staggeredHead(head: HeadPlan, staggerDeg: number): HeadPlan {
  const inwardOut = [...head.channels].sort((a, b) => a.radiusMm - b.radiusMm).map(({ channel }) => channel);
  const disc = planDisc(staggeredCode(head.disc.code, inwardOut, staggerDeg), head.disc.spec);
  const channels = disc.code.channels.map(({ track, angleDeg }, channel) => ({
    channel,
    track,
    radiusMm: disc.tracks[track]!.midRadiusMm,
    angleDeg,
  }));
  return { ...head, disc, channels };
}
