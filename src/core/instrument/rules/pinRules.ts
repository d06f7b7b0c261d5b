import { boardNamed, type Board } from '../../boards/index.ts';
import { buildCode, families } from '../../codes/index.ts';
import { cupsPinOf, positionsOf } from '../resolveInstrument.ts';
import type { Finding, PartialDraft } from './finding.ts';

const CHANNEL_PINS = 'controller.channelPins';

/** Channels of the code the file asks for, or `null` while that is open. [-] */
function channelsOf({ need, disc }: PartialDraft): number | null {
  const positions = need ? positionsOf(need) : null;
  const family = families.find(({ name }) => name === disc?.code);
  if (positions === null || !family || family.refusal(positions)) return null;
  return buildCode(family.name, positions).channels.length;
}

/** A pin each channel, and a channel each pin. */
function countRule(pins: readonly string[], draft: PartialDraft, board: Board): readonly Finding[] {
  const channels = channelsOf(draft);
  if (channels === null || pins.length === channels) return [];
  return [
    {
      code: 'instrument/pin-count',
      fields: [CHANNEL_PINS, 'need.positions', 'need.resolutionDeg', 'disc.code', 'controller.board'],
      what: 'The list of pins does not have one pin for each channel of the code.',
      got: `${pins.length} pins for ${channels} channels`,
      allowed: `${channels} pins`,
      fix:
        channels <= board.analogPins.length
          ? `Set controller.channelPins to [${board.analogPins.slice(0, channels).join(', ')}], or remove the line.`
          : 'Ask for fewer positions: the board has too few converter pins for this code.',
    },
  ];
}

/** Each pin exists, reads voltages, and is used once. */
function channelPinRules(pins: readonly string[], board: Board): readonly Finding[] {
  return pins.flatMap((pin, i): readonly Finding[] => {
    const field = `${CHANNEL_PINS}[${i}]`;
    const free = board.analogPins.find((candidate) => !pins.includes(candidate));
    const fix = free ? `Use ${free}, which is free.` : `Use each of ${board.analogPins.join(', ')} once.`;
    const allowed = `one of ${board.analogPins.join(', ')}, each once`;
    if (!board.analogPins.includes(pin)) {
      const what = `The board ${board.name} has no converter on that pin.`;
      return [
        { code: 'instrument/unknown-pin', fields: [field, 'controller.board'], what, got: pin, allowed, fix },
      ];
    }
    const first = pins.indexOf(pin);
    if (first === i) return [];
    const what = 'Two channels share one pin.';
    const got = `${pin} for channels ${first} and ${i}`;
    return [{ code: 'instrument/pin-used-twice', fields: [field, CHANNEL_PINS], what, got, allowed, fix }];
  });
}

/** The cups' pin feels edges and belongs to no channel. */
function cupsPinRule({ cups, controller }: PartialDraft, board: Board): readonly Finding[] {
  if (!cups) return [];
  const pin = cupsPinOf(cups, board);
  const fields: Finding['fields'] = ['cups.pin', 'controller.board', CHANNEL_PINS];
  const allowed = board.interruptPins.join(' or ');
  if (controller?.channelPins?.includes(pin)) {
    const what = 'The cups and a channel share one pin.';
    const fix = `Set cups.pin to ${board.interruptPins[0]}.`;
    return [{ code: 'instrument/pin-used-twice', fields, what, got: pin, allowed, fix }];
  }
  if (board.interruptPins.includes(pin)) return [];
  const what = `The board ${board.name} has no edge interrupt of its own on that pin, so pulses would be missed.`;
  const fix = `Set cups.pin to ${board.interruptPins[0]}.`;
  return [{ code: 'instrument/unknown-pin', fields, what, got: pin, allowed, fix }];
}

/** What `controller` and `cups` say about pins, taken together. */
export function pinRules(draft: PartialDraft): readonly Finding[] {
  const board = draft.controller && boardNamed(draft.controller.board);
  if (!board) return [];
  const pins = draft.controller?.channelPins;
  return [
    ...(pins ? [...countRule(pins, draft, board), ...channelPinRules(pins, board)] : []),
    ...cupsPinRule(draft, board),
  ];
}
