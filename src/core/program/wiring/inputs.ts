import type { Board } from '../../boards/index.ts';
import { gatheredInputs, INPUTS_MOST, type CircuitInput, type HeadPlan } from '../../head/index.ts';

/** Inputs of one shift register. [-] */
export const REGISTER_INPUTS = 8;

/** Lights of a head that looks at marks in three colours, in the order they are lit. */
export const LIGHT_COLOURS = ['red', 'green', 'blue'] as const;

/** Places where a channel can be wired to, for one kind of input. */
export interface InputPlaces {
  /** Names a maker may write in `controller.channelPins`, in the order they are given out. */
  readonly names: readonly string[];
  /** What they are, in the plural. */
  readonly are: string;
}

/** Pins that can be read or driven on and off and are not the serial line's; those without an interrupt first. */
export function freePins(board: Board, taken: readonly string[]): readonly string[] {
  const pins = board.digitalPins.filter((pin) => !board.serialPins.includes(pin) && !taken.includes(pin));
  const isPlain = (pin: string): boolean => !board.interruptPins.includes(pin);
  return [...pins.filter(isPlain), ...pins.filter((pin) => !isPlain(pin))];
}

/**
 * Where channels can be wired to.
 *
 * @param taken - Pins that something else needs.
 */
export function inputPlaces(input: CircuitInput, board: Board, taken: readonly string[]): InputPlaces {
  switch (input) {
    case 'direct':
      return { names: board.analogPins, are: 'analog inputs' };
    case 'digital':
      return {
        names: [...freePins(board, taken), ...board.analogPins.filter((pin) => !taken.includes(pin))].slice(
          0,
          INPUTS_MOST,
        ),
        are: 'free pins',
      };
    case 'multiplexer':
      return { names: gatheredInputs(input)!, are: 'inputs of the multiplexer' };
    case 'shift-register':
      return { names: gatheredInputs(input)!, are: 'inputs of two shift registers' };
    case 'ladder':
      return { names: gatheredInputs(input)!, are: 'legs of the ladder' };
  }
}

/** What a pin does for all channels together. */
export type BusRole =
  | 'common'
  | 'select 0'
  | 'select 1'
  | 'select 2'
  | 'select 3'
  | 'load'
  | 'clock'
  | 'data'
  | 'lights'
  | 'red'
  | 'green'
  | 'blue';

/** Jobs that an instrument needs a pin for, besides channels and cups. */
export function busRoles({ circuit, marks }: Pick<HeadPlan, 'circuit' | 'marks'>): readonly BusRole[] {
  const { input, emitters } = circuit;
  const roles: BusRole[] = [];
  if (input === 'multiplexer') roles.push('common', 'select 0', 'select 1', 'select 2', 'select 3');
  if (input === 'ladder') roles.push('common');
  if (input === 'shift-register') roles.push('load', 'clock', 'data');
  if (emitters === 'steady') return roles;
  return marks?.kind === 'colours' ? [...roles, ...LIGHT_COLOURS] : [...roles, 'lights'];
}
