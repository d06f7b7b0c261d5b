import type { DiscPlan } from '../disc/index.ts';
import type { Problem } from '../error/index.ts';
import type { HeadPlan } from '../head/index.ts';
import type { Instrument } from '../instrument/index.ts';
import { hubParts } from './hub/hubPart.ts';
import { headParts } from './headParts/headParts.ts';
import { bedProblems, drawingOf, type NamedSvg } from './solids/madePart.ts';
import { printSetting } from './solids/print.ts';
import { withShapes } from './solids/shapeKit.ts';
import type { Solid } from './solids/solid.ts';
import { PLASTIC_KG_PER_M3 } from './vaneParts/materials.ts';
import { cupParts, vaneParts } from './vaneParts/vaneParts.ts';

/** The printed parts of an instrument. */
export interface SolidParts {
  /** In the order of the build: head, housing, vane, cups. */
  readonly solids: readonly Solid[];
  /** One drawing a solid, of the same name. */
  readonly drawings: readonly NamedSvg[];
  /** Flat parts at their true size, to print on paper. */
  readonly sheets: readonly NamedSvg[];
  /** What keeps parts from being made; those that can be are made all the same. */
  readonly problems: readonly Problem[];
}

/** Inertia of a disc about its axis as if it had no windows: the most it can be. [kg m²] @source ½ m r² */
function discInertiaKgM2({ diameterMm, thicknessMm }: DiscPlan['spec']): number {
  const radiusM = diameterMm / 2000;
  return (Math.PI / 2) * PLASTIC_KG_PER_M3 * (thicknessMm / 1000) * radiusM ** 4;
}

/**
 * Every part of an instrument that is printed, save the disc: head, housing, vane, and cups where it has some.
 *
 * @param instrument - As read.
 * @param disc - Its disc.
 * @param head - Its channels in their places.
 * @returns Equal designs give equal solids, to the last bit.
 * @check test/journeys/solidParts.test.ts (admesh, lib3mf, closed forms)
 */
export function solidParts(instrument: Instrument, disc: DiscPlan, head: HeadPlan): Promise<SolidParts> {
  const { parts: choices } = instrument;
  const print = printSetting(disc.spec, choices);
  return withShapes((kit) => {
    const ofHead = headParts(kit, head, print, choices);
    const build = { bore: disc.spec.bore, print };
    // A strip has no shaft, so nothing that sits on one.
    const none = { parts: [], problems: [] };
    const ofDisc = disc.strip ? none : hubParts(kit, disc.spec, print);
    const ofVane =
      choices.vane && !disc.strip
        ? vaneParts(
            kit,
            { ...choices.vane, bedMm: print.bedMm, otherInertiaKgM2: discInertiaKgM2(disc.spec) },
            build,
          )
        : none;
    const ofCups = instrument.cups ? cupParts(kit, choices.cups, build) : none;
    const turning = [...ofVane.parts, ...ofCups.parts];
    const parts = [...ofHead.parts, ...ofDisc.parts, ...turning];
    return {
      solids: parts.map(({ solid }) => solid),
      drawings: parts.map(drawingOf),
      sheets: ofHead.sheets,
      problems: [
        ...ofHead.problems,
        ...ofDisc.problems,
        ...ofVane.problems,
        ...ofCups.problems,
        ...bedProblems(ofHead.parts, print, 'make disc.diameterMm smaller'),
        ...bedProblems(turning, print, 'make the fin or the cups smaller'),
      ],
    };
  });
}
