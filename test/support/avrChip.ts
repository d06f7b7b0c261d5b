import {
  ADCMuxInputType,
  AVRADC,
  AVRClock,
  AVREEPROM,
  AVRIOPort,
  AVRTimer,
  AVRUSART,
  AVRWatchdog,
  avrInstruction,
  CPU,
  PinState,
  usart0Config,
  type AVRPortConfig,
} from 'avr8js';
import { avrChips, type AvrChipName, type PortPin } from './avrChips.ts';

/** Clock of the chip. [Hz] */
export const CLOCK_HZ = 16_000_000;

/** Register of the reason for a start, and its bits. */
const MCUSR = 0x54;
const startBits = { power: 1, outside: 2, brownOut: 4, watchdog: 8, unknown: 0 } as const;

/** Program memory from Intel HEX; a record has length, address, type, bytes and a sum. */
function programMemory(hex: string): Uint16Array {
  const bytes = new Uint8Array(0x8000);
  for (const record of hex.split(/\r?\n/)) {
    if (!record.startsWith(':') || record.slice(7, 9) !== '00') continue;
    const length = parseInt(record.slice(1, 3), 16);
    const address = parseInt(record.slice(3, 7), 16);
    for (let i = 0; i < length; i++) bytes[address + i] = parseInt(record.slice(9 + 2 * i, 11 + 2 * i), 16);
  }
  return new Uint16Array(bytes.buffer);
}

/**
 * The emulator forgets a received character when the program switches sending on or off before reading it; the chip
 * does not (data sheet 8271, section 20.7.3: the flag stays until the buffer is read).
 */
function keepReceived(cpu: CPU, usart: typeof usart0Config): void {
  const { UCSRA, UCSRB, rxCompleteInterrupt: address } = usart;
  const received = {
    address,
    flagRegister: UCSRA,
    flagMask: 0x80,
    enableRegister: UCSRB,
    enableMask: 0x80,
    constant: true,
  };
  const hook = cpu.writeHooks[UCSRB]!;
  cpu.writeHooks[UCSRB] = (value, ...rest) => {
    const isWaiting = (cpu.data[UCSRA]! & received.flagMask) !== 0;
    const isDone = hook(value, ...rest);
    if (isWaiting) cpu.setInterruptFlag(received);
    return isDone;
  };
}

/** What the emulator keeps to itself about its watchdog. */
interface WatchdogInside {
  readonly checkWatchdog: () => void;
  readonly watchdogTimeout: number;
}

/** The emulator looks at its watchdog when the period before would have ended; the chip follows a new period at once. */
function followPeriod(cpu: CPU, WDTCSR: number, watchdog: AVRWatchdog): void {
  const inside = watchdog as unknown as WatchdogInside;
  const hook = cpu.writeHooks[WDTCSR]!;
  cpu.writeHooks[WDTCSR] = (...written) => {
    const isDone = hook(...written);
    while (cpu.clearClockEvent(inside.checkWatchdog));
    cpu.addClockEvent(inside.checkWatchdog, inside.watchdogTimeout - cpu.cycles);
    return isDone;
  };
}

/** What a test may choose about a chip. */
export interface ChipWishes {
  readonly chip?: AvrChipName;
  /** Memory that outlives the supply; share it between chips to cut the supply in between. */
  readonly eeprom?: Uint8Array;
  readonly start?: keyof typeof startBits;
}

/** Memory without power, as it leaves the factory. */
export const freshEeprom = (): Uint8Array => new Uint8Array(1024).fill(0xff);

/** An emulated chip with a program in it: voltages and levels go in, lines of text come out. */
export class AvrChip {
  /** Everything sent so far but status lines, cut at line feeds; the last one may not be complete. */
  readonly lines: string[] = [''];
  /** Status lines sent so far. */
  readonly statuses: string[] = [];
  /** Cycles at which a conversion was started. */
  readonly conversionCycles: number[] = [];
  /** Called before each conversion of an input, so that a test can make noise. */
  beforeConversion: (input: number) => void = () => {};
  /** Called after a pin of the chip may have changed. */
  onPins: () => void = () => {};
  /** Whether conversions come to an end; a program waits for ever when they do not. */
  converts = true;
  readonly eeprom: Uint8Array;
  readonly #memory: Uint16Array;
  readonly #chip: (typeof avrChips)[AvrChipName];
  readonly #volts: number[] = [];
  readonly #levels = new Map<string, boolean>();
  #cpu!: CPU;
  #inputs: number[] = [];
  #usart!: AVRUSART;
  #ports = new Map<string, AVRIOPort>();
  #mustRestart = false;
  #cyclesBefore = 0;

  constructor(
    hex: string,
    { chip = 'atmega328p', eeprom = freshEeprom(), start = 'power' }: ChipWishes = {},
  ) {
    this.#memory = programMemory(hex);
    this.#chip = avrChips[chip];
    this.eeprom = eeprom;
    this.#begin(start);
    for (const pin of [2, 3]) this.setDigital(pin, true); // pulled up until a switch closes
  }

  /** A chip fresh from its reset, with the same program and the same world around it. */
  #begin(start: keyof typeof startBits): void {
    const chip = this.#chip;
    const cpu = new CPU(this.#memory, chip.ramBytes);
    this.#cpu = cpu;
    cpu.reset = () => (this.#mustRestart = true);
    cpu.data[MCUSR] = startBits[start];
    // Without all its timers the millisecond counter of the core stands still.
    for (const config of chip.timers) new AVRTimer(cpu, config);
    const ports = Object.entries(chip.ports as Record<string, AVRPortConfig>);
    this.#ports = new Map(ports.map(([name, config]) => [name, new AVRIOPort(cpu, config)]));
    for (const port of this.#ports.values()) port.addListener(() => this.onPins());
    this.#converter(cpu);
    this.#usart = new AVRUSART(cpu, chip.usart, CLOCK_HZ);
    this.#usart.onByteTransmit = (byte) => this.#sent(byte);
    keepReceived(cpu, chip.usart);
    const memory = this.eeprom;
    const backend = {
      readMemory: (at: number) => memory[at]!,
      writeMemory: (at: number, value: number) => void (memory[at]! &= value),
      eraseMemory: (at: number) => void (memory[at] = 0xff),
    };
    new AVREEPROM(cpu, backend, chip.eeprom);
    followPeriod(cpu, chip.watchdog.WDTCSR, new AVRWatchdog(cpu, chip.watchdog, new AVRClock(cpu, CLOCK_HZ)));
    if (chip.pll !== null) cpu.readHooks[chip.pll] = () => cpu.data[chip.pll]! | 1;
    for (const [key, high] of this.#levels) this.#setPort(key, high);
  }

  #converter(cpu: CPU): void {
    const adc = new AVRADC(cpu, this.#chip.adc);
    this.#volts.forEach((volts, input) => (adc.channelValues[input] = volts));
    this.#inputs = adc.channelValues;
    const convert = adc.onADCRead;
    adc.onADCRead = (input) => {
      this.conversionCycles.push(this.#cyclesBefore + cpu.cycles);
      if (input.type === ADCMuxInputType.SingleEnded) this.beforeConversion(input.channel);
      if (this.converts) convert(input);
    };
  }

  #sent(byte: number): void {
    const last = this.lines.length - 1;
    if (byte !== 10) {
      this.lines[last] += String.fromCharCode(byte);
    } else if (this.lines[last]!.startsWith('vws')) {
      this.statuses.push(this.lines[last]!);
      this.lines[last] = '';
    } else {
      this.lines.push('');
    }
  }

  /** Time since power came first. [us] */
  get nowUs(): number {
    return ((this.#cyclesBefore + this.#cpu.cycles) * 1e6) / CLOCK_HZ;
  }

  /** Cuts the supply for a moment: everything but the memory that outlives it begins anew. */
  restart(start: keyof typeof startBits): void {
    this.#cyclesBefore += this.#cpu.cycles;
    this.#mustRestart = false;
    this.lines[this.lines.length - 1] = '';
    this.#begin(start);
  }

  /** Voltage of an analog input from now on. [V] */
  setVolts(input: number, volts: number): void {
    this.#volts[input] = volts;
    this.#inputs[input] = volts;
  }

  #portPin(pin: number | string): PortPin {
    const { pins, analogPins } = this.#chip;
    const found =
      typeof pin === 'string' && pin.startsWith('A')
        ? analogPins[Number(pin.slice(1))]
        : pins[Number(String(pin).replace('D', ''))];
    if (!found) throw new Error(`The chip has no pin ${pin}.`);
    return found;
  }

  #setPort(key: string, high: boolean): void {
    this.#ports.get(key[0]!)!.setPin(Number(key.slice(1)), high);
  }

  /** Level of a pin of the board from now on: 4, `D4` or `A4`. */
  setDigital(pin: number | string, high: boolean): void {
    const key = this.#portPin(pin).join('');
    this.#levels.set(key, high);
    this.#setPort(key, high);
  }

  /** Whether the program drives a pin of the board high. */
  isHigh(pin: number | string): boolean {
    const [port, bit] = this.#portPin(pin);
    return this.#ports.get(port)!.pinState(bit) === PinState.High;
  }

  /** Sends a line to the program as fast as someone types: the emulated port keeps one character at a time. */
  say(text: string): void {
    for (const character of `${text}\n`) {
      this.runUntil(() => !this.#usart.rxBusy, 20);
      this.#usart.writeByte(character.charCodeAt(0));
      this.runUntil(() => !this.#usart.rxBusy, 20);
      this.runMs(0.2);
    }
  }

  /** Changes a number of four bytes in working memory, lowest byte first. */
  setMemory(address: number, value: number): void {
    this.#cpu.dataView.setUint32(address, value, true);
  }

  /** Runs something at a later moment, exactly. */
  after(us: number, action: () => void): void {
    this.#cpu.addClockEvent(action, Math.round((us * CLOCK_HZ) / 1e6));
  }

  /** Lets the chip run until the condition holds. @throws when it does not within the time. */
  runUntil(condition: () => boolean, mostMs: number): void {
    const end = this.nowUs + mostMs * 1e3;
    while (!condition()) {
      if (this.nowUs > end) throw new Error(`The chip ran ${mostMs} ms without getting there.`);
      for (let i = 0; i < 64; i++) {
        avrInstruction(this.#cpu);
        this.#cpu.tick();
      }
      if (this.#mustRestart) this.restart('watchdog');
    }
  }

  /** Lets the chip run for a time. */
  runMs(ms: number): void {
    const end = this.nowUs + ms * 1e3;
    this.runUntil(() => this.nowUs >= end, ms + 1);
  }
}
