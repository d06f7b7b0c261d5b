import { showNumber } from '../../units/index.ts';
import type { Fit, FittedChannel, FittedWiring } from '../fit.ts';
import type { Cause } from './cause.ts';

/** A wrong wire makes readings from anywhere. [deg] */
const ANYWHERE_DEG = 90;

const percent = (share: number): string => `${showNumber(100 * share, 1)} %`;

/** What the wiring says, as far as there is one. */
export function wiringCauses(
  fit: Pick<Fit, 'wiring' | 'channels' | 'otherCode'>,
  drawn: readonly string[],
): Cause[] {
  if (fit.otherCode) return [otherCodeCause(fit.otherCode)];
  if (!fit.wiring) return [unknownCause()];
  const moved = fit.channels.filter((channel) => channel.moved);
  const inverted = fit.channels.filter((channel) => channel.inverted);
  return [
    ...(moved.length > 0 ? [movedCause(moved, fit.wiring, drawn)] : []),
    ...(inverted.length > 0 ? [invertedCause(inverted, fit.wiring)] : []),
    ...(fit.wiring.reversed ? [reversedCause()] : []),
  ];
}

function otherCodeCause({ code, explainedShare }: NonNullable<Fit['otherCode']>): Cause {
  return {
    kind: 'other-code',
    standing: 'mend',
    costDeg: 180,
    title: `The disc carries another code: ${code.family} with ${code.positions} positions`,
    evidence: `That code explains ${percent(explainedShare)} of the recording, the one in the file does not.`,
    instruction: `Set disc.code to ${code.family} and need.positions to ${code.positions}, or fit the disc that belongs to this file.`,
    picture: 'words',
    channels: [],
  };
}

function unknownCause(): Cause {
  return {
    kind: 'wiring-unknown',
    standing: 'mend',
    costDeg: 180,
    title: 'No wiring of this disc explains the recording',
    evidence:
      'Every order of the inputs, each input inverted or not, both ways round and all known codes were tried.',
    instruction:
      'Mend first what is said of single inputs, then turn slowly by hand through two whole turns and record again.',
    picture: 'words',
    channels: [],
  };
}

/** How sure the wiring is, for a sentence. */
function sure({ confidence, explainedShare }: FittedWiring): string {
  return `This wiring explains ${percent(explainedShare)} of the steps; that no other does as well is ${percent(confidence)} sure.`;
}

function movedCause(moved: readonly FittedChannel[], wiring: FittedWiring, drawn: readonly string[]): Cause {
  const list = moved
    .map(({ channel, pin }) => `channel ${channel} is on ${pin} and not on ${drawn[channel]}`)
    .join(', ');
  const isPair = moved.length === 2;
  return {
    kind: wiring.isOrderReversed ? 'order-reversed' : 'swapped',
    standing: 'corrected',
    costDeg: ANYWHERE_DEG,
    title: wiring.isOrderReversed
      ? 'The inputs are in the opposite order'
      : isPair
        ? `The wires of channels ${moved[0]!.channel} and ${moved[1]!.channel} are swapped`
        : `The wires of ${moved.length} channels are on each other's inputs`,
    evidence: `As wired, ${list}. ${sure(wiring)}`,
    instruction: `Leave the wires: the table puts ${moved.map(({ channel, pin }) => `channel ${channel} on ${pin}`).join(' and ')}. Or move them as drawn and record again.`,
    picture: 'words',
    channels: moved.map(({ channel }) => channel),
  };
}

function invertedCause(inverted: readonly FittedChannel[], wiring: FittedWiring): Cause {
  const names = inverted.map(({ channel, pin }) => `${channel}${pin ? ` (on ${pin})` : ''}`).join(', ');
  const plural = inverted.length > 1;
  return {
    kind: 'inverted',
    standing: 'corrected',
    costDeg: ANYWHERE_DEG,
    title: plural
      ? `Channels ${names} read the other way round`
      : `Channel ${names} reads the other way round`,
    evidence: `${plural ? 'They give' : 'It gives'} ${inverted[0]!.litIsHigh ? 'high' : 'low'} counts in light, against the drawing. ${sure(wiring)}`,
    instruction: `Leave it: the table turns ${plural ? 'them' : 'it'} round. Or swap sensor and resistor of channel ${inverted[0]!.channel} and record again.`,
    picture: 'words',
    channels: inverted.map(({ channel }) => channel),
  };
}

function reversedCause(): Cause {
  return {
    kind: 'sense-reversed',
    standing: 'corrected',
    costDeg: ANYWHERE_DEG,
    title: 'Headings run the wrong way round',
    evidence:
      'While the vane was turned as you say, the disc angle went against what head.patternedFace has it do.',
    instruction:
      'Leave it: the table turns the sense round. Most likely the patterned face looks the other way: check head.patternedFace.',
    picture: 'words',
    channels: [],
  };
}
