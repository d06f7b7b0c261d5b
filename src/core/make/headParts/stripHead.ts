import type { Problem } from '../../error/index.ts';
import type { HeadPlan } from '../../head/index.ts';
import { showDegrees } from '../../units/index.ts';

/** Height of the lower edge of a strip, as a radius of the disc of the same sizes. [mm] */
export function stripBaseMm({ disc: { spec, strip } }: HeadPlan): number {
  return strip ? spec.diameterMm / 2 - strip.heightMm : 0;
}

/**
 * A head over a strip as if over the disc of the same sizes: its tracks lie as far apart, so that the same bar fits.
 *
 * @param head - All its channels on the head line. A head over a disc is given back as it is.
 * @returns Channels at radii of that disc. [mm]
 */
export function headAcross(head: HeadPlan): HeadPlan {
  const { strip } = head.disc;
  if (!strip) return head;
  const channels = head.channels.map((channel) => {
    const { lowMm, highMm } = strip.bands[channel.track]!;
    return { ...channel, radiusMm: stripBaseMm(head) + (lowMm + highMm) / 2 };
  });
  return { ...head, channels };
}

/**
 * Channels that stand along a strip, where no bar across it reaches them.
 *
 * @returns One `make/strip-head-along` at most.
 */
export function alongProblems(head: HeadPlan): Problem[] {
  const first = head.channels.find(({ angleDeg }) => Math.abs(angleDeg) > 1e-9);
  if (!head.disc.strip || !first) return [];
  const isStaggered = (head.spec.staggerDeg ?? 0) > 0;
  return [
    {
      code: 'make/strip-head-along',
      what: 'Sensors stand along the strip, but the printed holders are bars across it.',
      where: isStaggered ? 'head.staggerDeg' : 'disc.code',
      got: `channel ${first.channel} at ${showDegrees(first.angleDeg)} of the turn`,
      allowed: 'every channel on the head line, each on a track of its own',
      fix: isStaggered
        ? 'Set head.staggerDeg to 0, and make disc.diameterMm larger if sensors then stand too close.'
        : 'Set disc.code to reflected-gray, or hold the sensors by parts of your own.',
    },
  ];
}
