import type { Problem } from '../../error/index.ts';
import type { HeadPlan } from '../../head/index.ts';
import { flatOutlines } from '../solids/flat.ts';
import { flatSvg } from '../solids/flatSvg.ts';
import { madePart, type MadePart, type NamedSvg } from '../solids/madePart.ts';
import type { PrintSetting } from '../solids/print.ts';
import type { ShapeKit } from '../solids/shapeKit.ts';
import type { PartsSpec } from '../../instrument/index.ts';
import { drillTemplate, TEMPLATE_MM } from './drillTemplate.ts';
import {
  holderHeights,
  lightHolder,
  reflectanceHolder,
  sensorHolder,
  spacer,
  TUNNEL_MM,
} from './facingHolders.ts';
import { headBuild, type HeadBuild } from './headBuild.ts';
import { housingParts } from './housing/housingParts.ts';
import { alignmentJig } from './jig.ts';
import type { FacingBody, ReflectanceBody, SlotBody } from '../../head/index.ts';
import { stripBaseMm } from './stripHead.ts';
import { slotBracket, slotMiddleMm } from './slotBracket.ts';

/** The printed parts of a head. */
export interface HeadParts {
  readonly parts: readonly MadePart[];
  /** Drill template at its true size, to print on paper. n = 0..1 */
  readonly sheets: readonly NamedSvg[];
  readonly problems: readonly Problem[];
}

const PRINT_DARK = 'Print in black plastic that stops your light: prove it with window 1 of the coupon.';

/** Where each channel stands: from the axis of a disc, or from the lower edge of a strip. */
function channelSizes(head: HeadPlan): { name: string; mm: number }[] {
  const [from, baseMm] = [head.disc.strip ? 'lower edge of the strip' : 'axis', stripBaseMm(head)];
  return head.channels.map(({ channel, radiusMm }) => ({
    name: `channel ${channel} from the ${from}`,
    mm: radiusMm - baseMm,
  }));
}

function facingParts(kit: ShapeKit, build: HeadBuild, sensor: FacingBody, light: FacingBody): MadePart[] {
  const { head, plan, print, choices } = build;
  const between = 2 * choices.airGapMm + head.disc.spec.thicknessMm;
  const count = `${head.channels.length}`;
  return [
    madePart(sensorHolder(kit, plan, { head, body: sensor, print }), print, {
      name: 'sensor-holder',
      sizes: [...channelSizes(head), { name: 'tunnel before each sensor', mm: TUNNEL_MM }],
      notes: [`Takes ${count} x ${sensor.title}, pushed in from behind as far as the ledge.`, PRINT_DARK],
    }),
    madePart(lightHolder(kit, plan, { head, body: light, print }), print, {
      name: 'light-holder',
      sizes: [{ name: 'height', mm: holderHeights(light, 0).totalMm }],
      notes: [`Takes ${count} x ${light.title}; lies on the face that looks at the disc.`, PRINT_DARK],
    }),
    madePart(spacer(kit, plan, print, between), print, {
      name: 'spacer',
      sizes: [
        { name: 'height', mm: between },
        { name: 'air on each side of the disc', mm: choices.airGapMm },
      ],
      notes: ['Goes between the two holders, outside the disc.'],
    }),
  ];
}

function reflectanceParts(kit: ShapeKit, build: HeadBuild, sensor: ReflectanceBody): MadePart[] {
  const { head, plan, print, choices } = build;
  // Pair and mask: the pair's face lies behind its mask, which counts towards its best distance.
  const between = sensor.bestDistanceMm + head.disc.spec.thicknessMm + choices.airGapMm;
  return [
    madePart(reflectanceHolder(kit, plan, { body: sensor, print }), print, {
      name: 'sensor-holder',
      sizes: [{ name: 'from the disc to the holder', mm: sensor.bestDistanceMm }],
      notes: [`Takes ${head.channels.length} x ${sensor.title}, facing the patterned face.`, PRINT_DARK],
    }),
    madePart(spacer(kit, plan, print, between), print, {
      name: 'spacer',
      sizes: [{ name: 'height', mm: between }],
      notes: [`Sets the pairs ${sensor.bestDistanceMm} mm from the patterned face.`],
    }),
  ];
}

function slotParts(kit: ShapeKit, { head, plan, print }: HeadBuild, sensor: SlotBody): MadePart[] {
  return [
    madePart(slotBracket(kit, plan, sensor, print), print, {
      name: 'sensor-holder',
      sizes: [{ name: 'from the foot to the middle of the disc', mm: slotMiddleMm(sensor) }],
      notes: [`Takes ${head.channels.length} x ${sensor.title}, arms towards the shaft.`],
    }),
  ];
}

function holders(kit: ShapeKit, build: HeadBuild): MadePart[] {
  const { sensor, light } = build.bodies;
  if (sensor.kind === 'slot') return slotParts(kit, build, sensor);
  if (sensor.kind === 'reflectance') return reflectanceParts(kit, build, sensor);
  return light ? facingParts(kit, build, sensor, light) : [];
}

/** Height of all that is screwed together on the housing's posts. [mm] */
function stackMm({ bodies: { sensor, light }, head, choices }: HeadBuild): number {
  if (sensor.kind === 'slot') return sensor.heightMm + 6;
  const between = 2 * choices.airGapMm + head.disc.spec.thicknessMm;
  const lightMm = light ? holderHeights(light, 0).totalMm : 0;
  return holderHeights(sensor, TUNNEL_MM).totalMm + between + lightMm;
}

function aids(kit: ShapeKit, { head, plan, print }: HeadBuild): MadePart[] {
  const template = kit.prism(flatOutlines(drillTemplate(plan, head, print)), [0, TEMPLATE_MM]);
  return [
    madePart(alignmentJig(kit, plan, head, print), print, {
      name: 'alignment-jig',
      sizes: [{ name: 'diameter of the disc', mm: head.disc.spec.diameterMm }],
      notes: [
        'Put it on the shaft in place of the disc, notch at the head line.',
        'Turn and shift the head until all channels read their most light together, then screw it down.',
      ],
    }),
    madePart(template, print, {
      name: 'drill-template',
      sizes: channelSizes(head),
      notes: ['Seen from the patterned face, head line straight up. Small holes: middle of each channel.'],
    }),
  ];
}

/** Template on paper: true sizes, whatever the printer of the parts does. */
function paperTemplate({ head, plan, print }: HeadBuild): NamedSvg {
  const trueSize = { scale: 1, edgeLossMm: 0, boreAllowanceMm: 0, footGrowthMm: 0 };
  const part = drillTemplate(plan, head, { ...print, corrections: trueSize });
  const title = 'Drill template: print at 100 %, never fitted to the page';
  return { name: 'drill-template', svg: flatSvg(title, [{ operation: 'cut', part }]) };
}

/**
 * The printed parts of a head: holders, spacer, alignment jig, drill template, housing and cap.
 *
 * @param kit - Makes the solids.
 * @param head - Channels in their places.
 * @returns The parts, or none and every problem found.
 * @check test/journeys/solidParts.test.ts
 */
export function headParts(kit: ShapeKit, head: HeadPlan, print: PrintSetting, choices: PartsSpec): HeadParts {
  const { build, problems } = headBuild(head, print, choices);
  if (!build) return { parts: [], sheets: [], problems };
  // A strip runs in guides of the maker's own: there is no shaft to line up with, and no housing round one.
  if (head.disc.strip) return { parts: holders(kit, build), sheets: [], problems: [] };
  return {
    parts: [...holders(kit, build), ...aids(kit, build), ...housingParts(kit, build, stackMm(build))],
    sheets: [paperTemplate(build)],
    problems: [],
  };
}
