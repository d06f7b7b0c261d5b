import { boardNamed } from '../../boards/index.ts';
import { cupsPinOf } from '../resolveInstrument.ts';
import type { Finding, PartialDraft } from './finding.ts';

const CHANNEL_PINS = 'controller.channelPins';

/** Each channel has a pin of its own. */
function channelPinRule(pins: readonly string[], boardPins: readonly string[]): readonly Finding[] {
  return pins.flatMap((pin, channel): readonly Finding[] => {
    const first = pins.indexOf(pin);
    if (first === channel) return [];
    const free = boardPins.find((candidate) => !pins.includes(candidate));
    return [
      {
        code: 'instrument/pin-used-twice',
        fields: [`${CHANNEL_PINS}[${channel}]`, CHANNEL_PINS],
        what: 'Two channels share one pin.',
        got: `${pin} for channels ${first} and ${channel}`,
        allowed: 'a pin of its own for each channel',
        fix: free ? `Write ${free}, which is free.` : `Write each of ${boardPins.join(', ')} once.`,
      },
    ];
  });
}

/**
 * Pins that the file gives away twice.
 *
 * Whether the board has such pins, and enough of them, is the program step's own check.
 */
export function pinRules({ controller, cups }: PartialDraft): readonly Finding[] {
  const board = controller && boardNamed(controller.board);
  const pins = controller?.channelPins;
  if (!board || !pins) return [];
  const findings = channelPinRule(pins, board.analogPins);
  if (!cups || !pins.includes(cupsPinOf(cups, board))) return findings;
  return [
    ...findings,
    {
      code: 'instrument/pin-used-twice',
      fields: ['cups.pin', CHANNEL_PINS, 'controller.board'],
      what: 'The cups and a channel share one pin.',
      got: `${cupsPinOf(cups, board)} for the cups and for channel ${pins.indexOf(cupsPinOf(cups, board))}`,
      allowed: 'a pin of its own for the cups',
      fix: `Set cups.pin to ${board.interruptPins.find((pin) => !pins.includes(pin)) ?? 'a pin no channel uses'}.`,
    },
  ];
}
