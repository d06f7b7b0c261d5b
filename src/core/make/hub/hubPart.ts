import { boreCircleMm, type Bore, type DiscSpec, type HubSpec } from '../../disc/index.ts';
import type { Problem } from '../../error/index.ts';
import { showMm } from '../../units/index.ts';
import { madePart, type MadePart } from '../solids/madePart.ts';
import { circleOutline } from '../solids/outline.ts';
import { boreIn, holeIn, islandIn, type PrintSetting } from '../solids/print.ts';
import type { Shape, ShapeKit } from '../solids/shapeKit.ts';

/** Plate that is glued to the disc, and wall round a screw or a bearing. [mm] @source common practice, no source. */
const PLATE_MM = 2;
const WALL_MM = 2.5;

/** Slit that a screw closes, and the cut that lets the ring bend. [mm] @source common practice, no source. */
const SLIT_MM = 1.5;

/** Play of a screw in its hole. [mm] @source common practice, no source: the medium row of ISO 273 for M3 is 0.4. */
const SCREW_PLAY_MM = 0.4;

/** Width of a nut over its flats and its height, in diameters of its screw. [-] @source ISO 4032: M3 is 5.5 and 2.4 mm. */
const NUT = { acrossFlats: 5.5 / 3, height: 0.8 } as const;

/** Ledge that carries a bearing by its outer ring. [mm] @source common practice, no source. */
const LEDGE_MM = 1.5;

/** The disc a hub belongs to, as far as it matters. */
export interface HubHost {
  readonly bore: Bore;
  readonly hubDiameterMm: number;
  readonly hub: Exclude<HubSpec, { kind: 'plain' }>;
}

/** Distance of the screw from the axis, and radius of the ring round bore and screw. [mm] */
function clampRadii(bore: Bore, screwMm: number): { screwMm: number; ringMm: number } {
  const screw = boreCircleMm(bore) / 2 + 1.2 + (screwMm + SCREW_PLAY_MM) / 2;
  return { screwMm: screw, ringMm: screw + screwMm / 2 + WALL_MM };
}

/** Diameter of what stands on the plate. [mm] */
export function hubRingMm({ bore, hub }: Pick<HubHost, 'bore' | 'hub'>): number {
  return hub.kind === 'clamp'
    ? 2 * clampRadii(bore, hub.screwMm).ringMm
    : hub.bearingDiameterMm + hub.clearanceMm + 2 * WALL_MM;
}

function plateAndRing(kit: ShapeKit, host: HubHost, print: PrintSetting, ringHeightMm: number): Shape {
  const plate = kit.cylinder(islandIn(print, host.hubDiameterMm) / 2, [0, PLATE_MM]);
  return plate.plus(kit.cylinder(islandIn(print, hubRingMm(host)) / 2, [0, PLATE_MM + ringHeightMm]));
}

function clampHub(
  kit: ShapeKit,
  host: HubHost,
  hub: Extract<HubSpec, { kind: 'clamp' }>,
  print: PrintSetting,
): Shape {
  const { screwMm: place, ringMm } = clampRadii(host.bore, hub.screwMm);
  const top = PLATE_MM + hub.heightMm;
  const [far, over] = [ringMm + 1, top + 1];
  const bore = kit.prism([boreIn(print, host.bore)], [-1, over]);
  const slit = kit.box([-SLIT_MM / 2, SLIT_MM / 2], [0, far], [PLATE_MM, over]);
  // The plate stays whole; the ring comes free of it on the side of the slit, so that it can close.
  const relief = kit.box([-far, far], [0, far], [PLATE_MM, PLATE_MM + SLIT_MM / 2]);
  const middle = PLATE_MM + SLIT_MM / 2 + (hub.heightMm - SLIT_MM / 2) / 2;
  const across = (outline: ReturnType<typeof circleOutline>, from: number, to: number): Shape =>
    // Drawn upright, then laid along x: up becomes across.
    kit.prism([outline], [from, to]).tilted(90).turned(-90).moved(0, place, middle);
  const screw = across(circleOutline(holeIn(print, hub.screwMm + SCREW_PLAY_MM) / 2), -far, far);
  const flats = holeIn(print, NUT.acrossFlats * hub.screwMm);
  const nutDepth = NUT.height * hub.screwMm;
  const wide = Math.sqrt(ringMm ** 2 - place ** 2);
  const pocket = kit.box(
    [wide - nutDepth, far],
    [place - flats / 2, far],
    [middle - flats / 2, middle + flats / 2],
  );
  return plateAndRing(kit, host, print, hub.heightMm).minus(bore, slit, relief, screw, pocket);
}

function bearingHub(
  kit: ShapeKit,
  host: HubHost,
  hub: Extract<HubSpec, { kind: 'bearing-seat' }>,
  print: PrintSetting,
): Shape {
  const seat = hub.bearingDiameterMm + hub.clearanceMm;
  const pocket = kit.cylinder(holeIn(print, seat) / 2, [PLATE_MM, PLATE_MM + hub.bearingWidthMm + 1]);
  const through = kit.cylinder(holeIn(print, seat - 2 * LEDGE_MM) / 2, [-1, PLATE_MM + 1]);
  return plateAndRing(kit, host, print, hub.bearingWidthMm).minus(pocket, through);
}

/** What keeps a hub from its disc. n ≤ 1 */
export function hubProblems({ bore, hub, hubDiameterMm }: HubHost): Problem[] {
  const ring = hubRingMm({ bore, hub });
  if (ring <= hubDiameterMm) return [];
  const least = Math.ceil(ring);
  return [
    {
      code: 'make/hub-too-small',
      what: 'The ring of the hub is wider than the solid middle of the disc: it would cover the innermost track.',
      where: 'disc.hubDiameterMm',
      got: `a ring of ${showMm(Number(ring.toFixed(2)))} on a hub of ${showMm(hubDiameterMm)}`,
      allowed: `${least} mm or more`,
      fix: `Set disc.hubDiameterMm to ${least}, or take a smaller ${hub.kind === 'clamp' ? 'screw' : 'bearing'}.`,
    },
  ];
}

/**
 * The printed hub of a disc: a plate that is glued to its plain face, with a split ring or a seat for a bearing on it.
 *
 * The bore of the ring is the disc's own, so one shaft centres both while the glue sets.
 *
 * @param kit - Makes the body.
 * @param host - Bore and hub of the disc. [mm]
 * @param print - Printer and its corrections.
 * @check src/core/make/hub/hubPart.test.ts (closed forms)
 */
export function hubPart(kit: ShapeKit, host: HubHost, print: PrintSetting): MadePart {
  const { hub } = host;
  const shape = hub.kind === 'clamp' ? clampHub(kit, host, hub, print) : bearingHub(kit, host, hub, print);
  const inside =
    hub.kind === 'clamp'
      ? { name: 'bore', mm: host.bore.diameterMm }
      : { name: 'seat of the bearing', mm: hub.bearingDiameterMm + hub.clearanceMm };
  const notes =
    hub.kind === 'clamp'
      ? [
          `Glue the plate to the plain face of the disc with the shaft through both.`,
          `Screw ${showMm(hub.screwMm)} with a nut in the pocket; close it no more than the shaft needs.`,
        ]
      : [
          `Press the bearing in by its outer ring.`,
          `Glue the plate to the plain face of the disc, centred on the shaft.`,
        ];
  return madePart(shape, print, {
    name: 'disc-hub',
    sizes: [
      { name: 'plate', mm: host.hubDiameterMm },
      { name: 'ring', mm: Number(hubRingMm(host).toFixed(2)) },
      { name: inside.name, mm: inside.mm },
    ],
    notes,
  });
}

/** The hub of a disc, where it has one that can be made. */
export function hubParts(
  kit: ShapeKit,
  { bore, hubDiameterMm, hub }: DiscSpec,
  print: PrintSetting,
): { readonly parts: readonly MadePart[]; readonly problems: readonly Problem[] } {
  if (!hub || hub.kind === 'plain') return { parts: [], problems: [] };
  const host = { bore, hubDiameterMm, hub };
  const problems = hubProblems(host);
  return { parts: problems.length > 0 ? [] : [hubPart(kit, host, print)], problems };
}
