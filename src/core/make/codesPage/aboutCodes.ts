import type { CodeOptions } from '../../codes/index.ts';

/** A code as the docs show it: one count, and what a maker should know. */
export interface AboutCode {
  readonly family: string;
  /** Count of the picture. [-] */
  readonly positions: number;
  readonly options: CodeOptions;
  readonly words: string;
}

/** One entry a family, in the order of `families`. */
export const aboutCodes: readonly AboutCode[] = [
  {
    family: 'reflected-gray',
    positions: 32,
    options: {},
    words:
      'The usual choice. One channel changes at each boundary, so a disc stopped on a boundary is half a step out at most. ' +
      'Any even count works: the middle words of the next full code are taken, and the ends still join.',
  },
  {
    family: 'long-run-gray',
    positions: 128,
    options: {},
    words:
      'One change at a time as well, with the shortest mark made as long as can be: for fine discs on coarse machines. ' +
      'It pays from about seven channels.',
  },
  {
    family: 'balanced-gray',
    positions: 64,
    options: {},
    words:
      'One change at a time, and every track changes about equally often, so that no sensor carries most of the edges. ' +
      'Useful where every channel is of the same kind on the same radius of wear or light.',
  },
  {
    family: 'single-track-gray',
    positions: 30,
    options: { headPlacement: 'even' },
    words:
      'One change at a time with all sensors on one track, spread round it: the marks are large and the disc is simple, ' +
      'but sensors must stand at their angles to within half a step. Sensors spread evenly never all read the same, so a dead lamp ' +
      'or a flood of daylight shows itself.',
  },
  {
    family: 'shift-register',
    positions: 25,
    options: { clockTrack: true },
    words:
      'Any count, odd ones too. Neighbouring sensors on one track look at one step each; several change at once, so a clock track ' +
      'tells when the word may be read, and in between the last reading stands.',
  },
  {
    family: 'vernier',
    positions: 56,
    options: {},
    words:
      'Two tracks of evenly spaced marks whose counts share no divisor; where they stand against each other tells the turn. ' +
      'It forgives only small errors of each track.',
  },
  {
    family: 'ternary-modular',
    positions: 27,
    options: {},
    words:
      'Three colours a track, of which none is a blend of the others. One channel changes at each boundary, odd counts included. ' +
      'With grey levels it would pass through a wrong level at every third step.',
  },
  {
    family: 'ternary-reflected',
    positions: 18,
    options: {},
    words:
      'Three levels a track that move one level at a time, so that grey levels serve as well as colours; only even counts join in a circle.',
  },
  {
    family: 'switch-ring',
    positions: 16,
    options: {},
    words:
      'A ring of switches under one magnet or window that closes one or two at a time: eight switches tell sixteen directions. ' +
      'Not a coded disc, but the same model, so that it can be compared honestly.',
  },
  {
    family: 'counting-wheel',
    positions: 32,
    options: { indexTrack: true },
    words:
      'Two sensors a quarter mark apart count steps and tell the sense; an index window sets the count once a turn. ' +
      'After a loss of power the direction is unknown until the index passes.',
  },
  {
    family: 'natural-binary',
    positions: 32,
    options: {},
    words:
      'Plain counting. At half of all boundaries several channels change at once and never at exactly one angle, so in between any mix ' +
      'of old and new shows: at the worst the opposite side of the dial. It is here to be compared with.',
  },
];
