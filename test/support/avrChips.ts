import {
  adcConfig,
  eepromConfig,
  portBConfig,
  portCConfig,
  portDConfig,
  portEConfig,
  portFConfig,
  timer0Config,
  timer1Config,
  timer2Config,
  usart0Config,
  watchdogConfig,
} from 'avr8js';

/** A pin of the chip: port letter and bit. */
export type PortPin = readonly ['B' | 'C' | 'D' | 'E' | 'F', number];

/** What the two chips do not have in common, as their data sheets print it. */
const atmega328p = {
  ramBytes: 2048,
  ports: { B: portBConfig, C: portCConfig, D: portDConfig },
  timers: [timer0Config, timer1Config, timer2Config],
  adc: adcConfig,
  usart: usart0Config,
  eeprom: eepromConfig,
  watchdog: watchdogConfig,
  /** D0 to D13 and A0 to A5 of the usual board. */
  pins: [
    ...Array.from({ length: 8 }, (_, bit): PortPin => ['D', bit]),
    ...Array.from({ length: 6 }, (_, bit): PortPin => ['B', bit]),
  ],
  analogPins: Array.from({ length: 6 }, (_, bit): PortPin => ['C', bit]),
  /** Register whose lowest bit says that the clock of the USB part is steady; `null` without USB. */
  pll: null,
};

const edge = (index: number, register: number, interrupt: number) => ({
  EICR: register,
  EIMSK: 0x3d,
  EIFR: 0x3c,
  index,
  iscOffset: 2 * (index % 4),
  interrupt,
});

const port = (at: number) => ({ PIN: at, DDR: at + 1, PORT: at + 2, externalInterrupts: [] });

// Vectors of the ATmega32U4 data sheet 7766, table 9-1, as word addresses: two words a vector.
const atmega32u4 = {
  ramBytes: 2560,
  ports: {
    B: port(0x23),
    C: port(0x26),
    D: {
      ...port(0x29),
      externalInterrupts: [edge(0, 0x69, 2), edge(1, 0x69, 4), edge(2, 0x69, 6), edge(3, 0x69, 8)],
    },
    E: { ...portEConfig, externalInterrupts: [null, null, null, null, null, null, edge(6, 0x6a, 0x0e)] },
    F: portFConfig,
  },
  timers: [
    { ...timer0Config, compAInterrupt: 0x2a, compBInterrupt: 0x2c, ovfInterrupt: 0x2e },
    {
      ...timer1Config,
      captureInterrupt: 0x20,
      compAInterrupt: 0x22,
      compBInterrupt: 0x24,
      ovfInterrupt: 0x28,
    },
  ],
  adc: { ...adcConfig, adcInterrupt: 0x3a },
  usart: {
    rxCompleteInterrupt: 0x32,
    dataRegisterEmptyInterrupt: 0x34,
    txCompleteInterrupt: 0x36,
    UCSRA: 0xc8,
    UCSRB: 0xc9,
    UCSRC: 0xca,
    UBRRL: 0xcc,
    UBRRH: 0xcd,
    UDR: 0xce,
  },
  eeprom: { ...eepromConfig, eepromReadyInterrupt: 0x3c },
  watchdog: { ...watchdogConfig, watchdogInterrupt: 0x18 },
  // prettier-ignore
  pins: [
    ['D', 2], ['D', 3], ['D', 1], ['D', 0], ['D', 4], ['C', 6], ['D', 7],
    ['E', 6], ['B', 4], ['B', 5], ['B', 6], ['B', 7], ['D', 6], ['C', 7],
  ] as PortPin[],
  // prettier-ignore
  analogPins: [['F', 7], ['F', 6], ['F', 5], ['F', 4], ['F', 1], ['F', 0]] as PortPin[],
  pll: 0x49,
};

/** The chips that the emulator is set up for. */
export const avrChips = { atmega328p, atmega32u4 };
/** Name of one. */
export type AvrChipName = keyof typeof avrChips;
