import type { ProgramFacts } from '../facts.ts';
import { braced, sectionHeading } from '../unit/text.ts';
import { LIGHT_COLOURS } from '../wiring/inputs.ts';
import { busPin } from '../wiring/wiring.ts';

/** Name of a pin in the program's language: `A0` stays, `D2` is plain 2. */
export function pinText(pin: string): string {
  return pin.replace(/^D/, '');
}

/** Number by which the converter knows a pin. */
function converterInput({ wiring }: ProgramFacts, pin: string): number {
  const { analogPins, converterInputs } = wiring.board;
  return converterInputs[analogPins.indexOf(pin)]!;
}

/** Number of an input of a multiplexer or shift register: `Y3` is 3. */
const inputNumber = (pin: string): number => Number(pin.slice(1));

function busText({ wiring }: ProgramFacts): string {
  const pin = (role: Parameters<typeof busPin>[1]): string => pinText(busPin(wiring, role)!);
  if (wiring.input === 'multiplexer') {
    const selects = ([0, 1, 2, 3] as const).map((line) => pin(`select ${line}`));
    return `const uint8_t SELECT_PIN[4] = ${braced(selects)};  // S0 to S3 of the multiplexer\n`;
  }
  if (wiring.input !== 'shift-register') return '';
  return `const uint8_t LOAD_PIN = ${pin('load')};
const uint8_t CLOCK_PIN = ${pin('clock')};
const uint8_t DATA_PIN = ${pin('data')};
`;
}

/** Which leg of the ladder each channel drives, and what counts mean which word. */
function ladderText(facts: ProgramFacts): string {
  const { wiring, ladder } = facts;
  const common = busPin(wiring, 'common')!;
  return `// Legs of the ladder, and the converter's input that it ends in, pin ${common}.
const uint8_t CHANNEL_INPUT[CHANNELS] = ${braced(wiring.channelPins.map(inputNumber))};
const uint8_t COMMON_INPUT = ${converterInput(facts, common)};
// Words of the legs in the order of their counts, and the counts from which on each but the first is meant.
const uint16_t LADDER_WORDS = ${ladder!.words.length};
const uint8_t LADDER_WORD[LADDER_WORDS] PROGMEM = ${braced(ladder!.words)};
const uint16_t LADDER_FROM[LADDER_WORDS - 1] PROGMEM = ${braced(ladder!.fromCounts)};
`;
}

function channelText(facts: ProgramFacts): string {
  const { wiring } = facts;
  const pins = wiring.channelPins;
  switch (wiring.input) {
    case 'direct':
      return `// Inputs of the converter, pins ${pins.join(', ')}.
const uint8_t CHANNEL_INPUT[CHANNELS] = ${braced(pins.map((pin) => converterInput(facts, pin)))};\n`;
    case 'digital':
      return `const uint8_t CHANNEL_PIN[CHANNELS] = ${braced(pins.map(pinText))};\n`;
    case 'multiplexer':
      return `// Inputs of the multiplexer, and the converter's input behind it, pin ${busPin(wiring, 'common')}.
const uint8_t CHANNEL_INPUT[CHANNELS] = ${braced(pins.map(inputNumber))};
const uint8_t COMMON_INPUT = ${converterInput(facts, busPin(wiring, 'common')!)};\n`;
    case 'shift-register':
      return `// Inputs of the shift registers in the order they come out: R0 is the last input of the first one.
const uint8_t CHANNEL_INPUT[CHANNELS] = ${braced(pins.map(inputNumber))};
const uint8_t REGISTER_INPUTS = ${8 * Math.ceil((Math.max(...pins.map(inputNumber)) + 1) / 8)};\n`;
    case 'ladder':
      return ladderText(facts);
  }
}

/** Pins of channels, chips around them, and lights. */
export function circuitText(facts: ProgramFacts): string {
  const single = busPin(facts.wiring, 'lights');
  const colours = LIGHT_COLOURS.map((colour) => busPin(facts.wiring, colour)).filter((pin) => pin !== null);
  const pinsText =
    single === null
      ? `const uint8_t LIGHTS_PIN[3] = ${braced(colours.map(pinText))};  // red, green and blue\n`
      : `const uint8_t LIGHTS_PIN = ${pinText(single)};\n`;
  const lightsText =
    facts.settleUs === null
      ? ''
      : `${pinsText}// The sensors have followed the lights after this long, in microseconds.
const uint16_t SETTLE_US = ${facts.settleUs};
`;
  return `${sectionHeading('Circuit')}

${channelText(facts)}${busText(facts)}${lightsText}`.trimEnd();
}
