import type { CodeTable } from '../../codes/index.ts';
import type { Bore, DiscSpec } from '../discSpec.ts';
import { boreCircleMm } from '../layout/bore.ts';
import { materialGrid } from '../pieces/materialGrid.ts';
import { leastThicknessMm } from './bridges.ts';
import { fitFaults, shortestMarks, type Shortest } from './fit.ts';
import { inspect } from './inspect.ts';
import { leastDrawn, type LeastDrawn } from './leastDrawn.ts';
import { isFlatInBore, mountFaults, WIDEST_NOTCH_SHARE } from './mount.ts';
import { LARGEST_DISC_MM } from './usableSizes.ts';

/** Fineness of the sizes proposed. [mm] */
const STEP_MM = 0.1;

/** Next size of that fineness, free of rounding dust. [mm] */
function upTo(size: number, step = STEP_MM): number {
  const parts = Math.round(1 / step);
  return Math.ceil(size * parts - 1e-6) / parts;
}

/** A bore that the process can make, its flat inside it: a tenth of the diameter deep, as on most D shafts. */
function possibleBore(bore: Bore, least: LeastDrawn): Bore {
  const diameterMm = Math.max(bore.diameterMm, upTo(least.windowMm));
  if (bore.shape !== 'd') return { ...bore, diameterMm };
  const same = { ...bore, diameterMm };
  return isFlatInBore(same) ? same : { ...same, acrossFlatMm: upTo(0.9 * diameterMm, 0.01) };
}

/** A notch that can be made and seen. */
function possibleNotch({ notch, diameterMm }: DiscSpec, least: LeastDrawn): DiscSpec['notch'] {
  if (notch.widthMm === 0) return notch;
  return {
    widthMm: Math.max(upTo(least.windowMm), Math.min(notch.widthMm, diameterMm * WIDEST_NOTCH_SHARE)),
    depthMm: Math.max(notch.depthMm, upTo(least.windowMm / 2)),
  };
}

/** A ring no thinner than asked, nor than the least; 0 stays 0. [mm] */
function ringFrom(asked: number, least: number): number {
  return asked === 0 || asked >= least ? asked : upTo(least, 0.01);
}

/** The spec with what is too small for the process raised to the least it can make. */
function withMinima(spec: DiscSpec): DiscSpec {
  const least = leastDrawn(spec);
  const bore = possibleBore(spec.bore, least);
  const notch = possibleNotch(spec, least);
  const behindNotch = notch.depthMm + least.wallMm;
  return {
    ...spec,
    bore,
    notch,
    hubDiameterMm: Math.max(spec.hubDiameterMm, upTo(boreCircleMm(bore) + 2 * least.wallMm)),
    webMm: ringFrom(spec.webMm, least.webMm),
    rimMm:
      notch.widthMm > 0 ? Math.max(spec.rimMm, upTo(behindNotch, 0.01)) : ringFrom(spec.rimMm, least.webMm),
  };
}

/** Sizes are tried at this distance first, then more finely below the first that works. [mm] */
const STRIDE_MM = 1;

/** The smallest size from the one at hand upwards that works, to 0.1 mm; `null` when none does. [mm] */
function firstSize(from: number, works: (size: number) => boolean): number | null {
  const start = upTo(from);
  let large = start;
  while (!works(large)) {
    large = upTo(large + STRIDE_MM);
    if (large > LARGEST_DISC_MM) return null;
  }
  let size = large;
  for (let less = large; less >= Math.max(start, large - STRIDE_MM); less = upTo(less - STEP_MM)) {
    if (works(less)) size = less;
  }
  return size;
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

/** The spec as thick as its bridges need; as it is where they break at no touch. */
function thickEnough(code: CodeTable, spec: DiscSpec): DiscSpec {
  const { plan, faults } = inspect(code, spec);
  if (!plan || !faults.some((fault) => fault.code === 'disc/bridge-too-weak')) return spec;
  return { ...spec, thicknessMm: upTo(leastThicknessMm(materialGrid(plan), spec)) };
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
  const webs = least.webMm > 0 ? [least.webMm] : [0, upTo(leastDrawn(spec).webMm, 0.01)];
  for (const webMm of webs) {
    const roomy = withRoom({ ...least, webMm }, shortest);
    const candidate = roomy && thickEnough(code, roomy);
    if (candidate && inspect(code, candidate).faults.length === 0) return candidate;
  }
  return null;
}
