import type { CodeTable } from '../../codes/index.ts';
import type { DiscSpec } from '../discSpec.ts';
import { fitFaults, shortestMarks, type Shortest } from './fit.ts';
import { inspect } from './inspect.ts';
import { leastDrawn } from './leastDrawn.ts';
import { mountFaults, WIDEST_NOTCH_SHARE } from './mount.ts';
import { LARGEST_DISC_MM } from './usableSizes.ts';

/** Fineness of the sizes proposed. [mm] */
const STEP_MM = 0.1;

/** Next size of that fineness, free of rounding dust. [mm] */
function upTo(size: number, step = STEP_MM): number {
  const parts = Math.round(1 / step);
  return Math.ceil(size * parts - 1e-6) / parts;
}

/** The spec with what is too small for the process raised to the least it can make, and the bore made possible. */
function withMinima(spec: DiscSpec): DiscSpec {
  const least = leastDrawn(spec.process);
  const hasNotch = spec.notch.widthMm > 0;
  const depthMm = hasNotch ? spec.notch.depthMm || upTo(least.windowMm) : spec.notch.depthMm;
  const rim = hasNotch ? Math.max(spec.rimMm, depthMm + least.webMm) : spec.rimMm;
  const bore = { ...spec.bore, diameterMm: Math.max(spec.bore.diameterMm, upTo(least.windowMm)) };
  if (
    bore.shape === 'd' &&
    !(bore.acrossFlatMm > bore.diameterMm / 2 && bore.acrossFlatMm < bore.diameterMm)
  ) {
    bore.acrossFlatMm = upTo(0.9 * bore.diameterMm, 0.01);
  }
  const widest = spec.diameterMm * WIDEST_NOTCH_SHARE;
  return {
    ...spec,
    bore,
    hubDiameterMm: Math.max(spec.hubDiameterMm, upTo(bore.diameterMm + 2 * least.webMm)),
    webMm: spec.webMm > 0 ? Math.max(spec.webMm, upTo(least.webMm, 0.01)) : 0,
    rimMm: rim > 0 ? Math.max(rim, upTo(Math.max(rim === spec.rimMm ? 0 : rim, least.webMm), 0.01)) : 0,
    notch: hasNotch
      ? { depthMm, widthMm: Math.max(upTo(least.windowMm), Math.min(spec.notch.widthMm, widest)) }
      : spec.notch,
  };
}

/** Sizes to try, from the one at hand upwards. [mm] */
function firstSize(from: number, works: (size: number) => boolean): number | null {
  for (let size = upTo(from); size <= LARGEST_DISC_MM; size = upTo(size + STEP_MM))
    if (works(size)) return size;
  return null;
}

/** A hub of half the disc leaves tracks of nearly equal length. [-] */
const LARGE_HUB_SHARE = 0.5;

/** The spec with the smallest diameter, hub, or both, at which its tracks fit; `null` when none does. */
function withRoom(spec: DiscSpec, shortest: readonly Shortest[]): DiscSpec | null {
  const fits = (changed: Partial<DiscSpec>): boolean => {
    const candidate = { ...spec, ...changed };
    return mountFaults(candidate).length === 0 && fitFaults(shortest, candidate).length === 0;
  };
  if (fits({})) return spec;
  const hubShare = spec.hubDiameterMm / spec.diameterMm;
  // An instrument file that leaves the hub out lets it grow with the disc: the diameter must do either way.
  const growsAlong = hubShare <= LARGE_HUB_SHARE;
  const diameter = firstSize(
    spec.diameterMm,
    (diameterMm) =>
      fits({ diameterMm }) && (!growsAlong || fits({ diameterMm, hubDiameterMm: hubShare * diameterMm })),
  );
  if (diameter !== null) return { ...spec, diameterMm: diameter };
  const hub = firstSize(spec.hubDiameterMm, (hubDiameterMm) => fits({ hubDiameterMm }));
  if (hub !== null) return { ...spec, hubDiameterMm: hub };
  const roomyHub = (diameterMm: number) => upTo(Math.max(spec.hubDiameterMm, LARGE_HUB_SHARE * diameterMm));
  const both = firstSize(spec.diameterMm, (diameterMm) =>
    fits({ diameterMm, hubDiameterMm: roomyHub(diameterMm) }),
  );
  return both === null ? null : { ...spec, diameterMm: both, hubDiameterMm: roomyHub(both) };
}

/**
 * The disc nearest to the one asked for that has no fault: thin rings raised to what the process can make, then a
 * larger diameter or hub where the tracks need it, then a web where pieces or necks need one.
 *
 * @param code - Code to be laid on the disc.
 * @param spec - The disc as asked for, with usable sizes. [mm]
 * @returns A spec without faults, or `null` when no size up to the largest disc mends it.
 */
export function mend(code: CodeTable, spec: DiscSpec): DiscSpec | null {
  const least = withMinima(spec);
  const shortest = shortestMarks(code, spec);
  const webs = least.webMm > 0 ? [least.webMm] : [0, upTo(leastDrawn(spec.process).webMm, 0.01)];
  for (const webMm of webs) {
    const candidate = withRoom({ ...least, webMm }, shortest);
    if (candidate && inspect(code, candidate).faults.length === 0) return candidate;
  }
  return null;
}
