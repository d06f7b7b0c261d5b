import { showMm } from '../../units/index.ts';
import { hubDiameterOf } from '../resolveInstrument.ts';
import type { Finding, PartialDraft } from './finding.ts';

type Disc = NonNullable<PartialDraft['disc']>;

/** Bore within hub, hub within rim. */
function nestingRule(disc: Disc): readonly Finding[] {
  const hub = hubDiameterOf(disc);
  const isOwnHub = disc.hubDiameterMm !== undefined;
  const { diameterMm, bore } = disc;
  const fields: Finding['fields'] = ['disc.hubDiameterMm', 'disc.bore.diameterMm', 'disc.diameterMm'];
  if (isOwnHub && bore.diameterMm >= hub) {
    return [
      {
        code: 'instrument/bore-beyond-hub',
        fields: ['disc.bore.diameterMm', 'disc.hubDiameterMm'],
        what: 'The bore is as large as the hub round it, so nothing would hold the disc on its shaft.',
        got: `bore ${showMm(bore.diameterMm)}, hub ${showMm(hub)}`,
        allowed: `a bore below ${showMm(hub)}`,
        fix: `Set disc.hubDiameterMm to ${bore.diameterMm + 10}, or remove that line, or make the bore smaller.`,
      },
    ];
  }
  if (hub < diameterMm) return [];
  return [
    {
      code: 'instrument/hub-beyond-rim',
      fields: isOwnHub ? fields : ['disc.bore.diameterMm', 'disc.diameterMm', 'disc.hubDiameterMm'],
      what: 'The hub is as large as the whole disc, so no track is left.',
      got: `hub ${showMm(hub)}${isOwnHub ? '' : `, which follows from the bore of ${showMm(bore.diameterMm)}`}, disc ${showMm(diameterMm)}`,
      allowed: `a hub below ${showMm(diameterMm)}`,
      fix: `Set disc.diameterMm to ${Math.ceil(hub * 2.8)}, or make ${isOwnHub ? 'the hub' : 'the bore'} smaller.`,
    },
  ];
}

/** The flat of a D bore lies between its middle and its edge. */
function flatRule({ bore }: Disc): readonly Finding[] {
  if (bore.shape !== 'd') return [];
  const { diameterMm, acrossFlatMm } = bore;
  if (acrossFlatMm > diameterMm / 2 && acrossFlatMm < diameterMm) return [];
  return [
    {
      code: 'instrument/flat-outside-bore',
      fields: ['disc.bore.acrossFlatMm', 'disc.bore.diameterMm'],
      what: 'The flat of the bore does not lie between its middle and its edge.',
      got: `${showMm(acrossFlatMm)} across the flat of a ${showMm(diameterMm)} bore`,
      allowed: `more than ${showMm(diameterMm / 2)} and less than ${showMm(diameterMm)}, measured from the flat to the far side`,
      fix: `Set disc.bore.acrossFlatMm to ${Number((0.9 * diameterMm).toPrecision(3))}, or use shape: round.`,
    },
  ];
}

/** What `disc` says, taken together; where tracks go is the disc step's own check. */
export function discRules({ disc }: PartialDraft): readonly Finding[] {
  return disc ? [...nestingRule(disc), ...flatRule(disc)] : [];
}
