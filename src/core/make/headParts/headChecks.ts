import type { Problem } from '../../error/index.ts';
import type { HeadPlan } from '../../head/index.ts';
import { showMm } from '../../units/index.ts';
import type { PrintSetting } from '../solids/print.ts';
import { apertureProblems } from './aperture.ts';
import { crowdingProblems, type Crowd, type Side } from './crowding.ts';
import { bearingFor, bearings } from './housing/fittings.ts';
import { leastInnerRadiusMm, type HolderPlan } from './holderPlan.ts';
import type { ChosenBodies } from './chosenBodies.ts';
import { slotFootprint, slotProblems } from './slotBracket.ts';

function crowd(side: Side, head: HeadPlan, { process }: PrintSetting): Crowd {
  return { side, spec: head.disc.spec, channels: head.channels, wallMm: process.minLandMm };
}

function bodyProblems(head: HeadPlan, { sensor, light }: ChosenBodies, print: PrintSetting): Problem[] {
  if (sensor.kind === 'slot') {
    const asBox = { kind: 'reflectance', title: sensor.title, lengthMm: 0, bestDistanceMm: 0 } as const;
    return [
      ...slotProblems(sensor, head.disc.spec, head.channels),
      ...crowdingProblems({ ...asBox, footprint: slotFootprint(sensor) }, crowd('sensor', head, print)),
    ];
  }
  return [
    ...crowdingProblems(sensor, crowd('sensor', head, print)),
    ...(light ? crowdingProblems(light, crowd('light', head, print)) : []),
    ...(sensor.kind === 'facing' ? apertureProblems(head.spec.aperture, print) : []),
  ];
}

/** A holder that would rub on the shaft. */
function shaftProblems(head: HeadPlan, plan: HolderPlan): Problem[] {
  const { bore, hubDiameterMm } = head.disc.spec;
  const least = leastInnerRadiusMm(bore.diameterMm);
  if (plan.innerRadiusMm >= least) return [];
  const wider = Math.ceil(hubDiameterMm + 2 * (least - plan.innerRadiusMm));
  return [
    {
      code: 'make/head-meets-shaft',
      what: 'The innermost sensor stands so near the shaft that its holder would rub on it.',
      where: 'disc.hubDiameterMm',
      got: `a holder ${showMm(plan.innerRadiusMm)} from the axis`,
      allowed: `${showMm(least)} or more, on a shaft of ${showMm(bore.diameterMm)}`,
      fix: `Set disc.hubDiameterMm to ${wider}, and disc.diameterMm larger by as much.`,
    },
  ];
}

function bearingProblems({ disc }: HeadPlan): Problem[] {
  const shaft = disc.spec.bore.diameterMm;
  if (bearingFor(shaft)) return [];
  const known = bearings.map(({ shaftMm }) => shaftMm);
  const nearest = known.reduce((best, size) =>
    Math.abs(size - shaft) < Math.abs(best - shaft) ? size : best,
  );
  return [
    {
      code: 'make/no-bearing',
      what: 'No common ball bearing fits this shaft, so the housing has no seat for one.',
      where: 'disc.bore.diameterMm',
      got: showMm(shaft),
      allowed: `${known.join(', ')} mm`,
      fix: `Set disc.bore.diameterMm to ${nearest}.`,
    },
  ];
}

/** Everything that keeps the head's parts from being made, or from fitting. n ≥ 0 */
export function headProblems(
  head: HeadPlan,
  plan: HolderPlan,
  bodies: ChosenBodies,
  print: PrintSetting,
): Problem[] {
  const ofBodies = bodyProblems(head, bodies, print);
  // A strip has no shaft.
  return head.disc.strip ? ofBodies : [...ofBodies, ...shaftProblems(head, plan), ...bearingProblems(head)];
}
