import {
  ADCMuxInputType,
  AVRADC,
  adcConfig,
  AVRIOPort,
  AVRTimer,
  AVRUSART,
  avrInstruction,
  CPU,
  portBConfig,
  portCConfig,
  portDConfig,
  timer0Config,
  timer1Config,
  timer2Config,
  usart0Config,
} from 'avr8js';

/** Clock of the chip. [Hz] */
export const CLOCK_HZ = 16_000_000;

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

/** An emulated ATmega328P with a program in it: voltages and levels go in, lines of text come out. */
export class AvrChip {
  /** Everything sent so far, cut at line feeds; the last one may not be complete. */
  readonly lines: string[] = [''];
  /** Cycles at which a conversion was started. */
  readonly conversionCycles: number[] = [];
  /** Called before each conversion of an input, so that a test can make noise. */
  beforeConversion: (input: number) => void = () => {};
  private readonly cpu: CPU;
  private readonly adc: AVRADC;
  private readonly portD: AVRIOPort;

  constructor(hex: string) {
    const cpu = new CPU(programMemory(hex), 2048);
    this.cpu = cpu;
    // Without all three timers the millisecond counter of the core stands still.
    for (const config of [timer0Config, timer1Config, timer2Config]) new AVRTimer(cpu, config);
    for (const config of [portBConfig, portCConfig]) new AVRIOPort(cpu, config);
    this.portD = new AVRIOPort(cpu, portDConfig);
    this.adc = new AVRADC(cpu, adcConfig);
    const convert = this.adc.onADCRead;
    this.adc.onADCRead = (input) => {
      this.conversionCycles.push(cpu.cycles);
      if (input.type === ADCMuxInputType.SingleEnded) this.beforeConversion(input.channel);
      convert(input);
    };
    const usart = new AVRUSART(cpu, usart0Config, CLOCK_HZ);
    usart.onByteTransmit = (byte) => {
      if (byte === 10) this.lines.push('');
      else this.lines[this.lines.length - 1] += String.fromCharCode(byte);
    };
    this.setDigital(2, true); // pulled up until a switch closes
    this.setDigital(3, true);
  }

  /** Time since power came. [us] */
  get nowUs(): number {
    return (this.cpu.cycles * 1e6) / CLOCK_HZ;
  }

  /** Voltage of an analog input from now on. [V] */
  setVolts(input: number, volts: number): void {
    this.adc.channelValues[input] = volts;
  }

  /** Level of a pin of port D (D0 to D7) from now on. */
  setDigital(pin: number, high: boolean): void {
    this.portD.setPin(pin, high);
  }

  /** Changes a number of four bytes in working memory, lowest byte first. */
  setMemory(address: number, value: number): void {
    this.cpu.dataView.setUint32(address, value, true);
  }

  /** Runs something at a later moment, exactly. */
  after(us: number, action: () => void): void {
    this.cpu.addClockEvent(action, Math.round((us * CLOCK_HZ) / 1e6));
  }

  /** Lets the chip run until the condition holds. @throws when it does not within the time. */
  runUntil(condition: () => boolean, mostMs: number): void {
    const end = this.cpu.cycles + (mostMs * CLOCK_HZ) / 1e3;
    while (!condition()) {
      if (this.cpu.cycles > end) throw new Error(`The chip ran ${mostMs} ms without getting there.`);
      for (let i = 0; i < 64; i++) {
        avrInstruction(this.cpu);
        this.cpu.tick();
      }
    }
  }

  /** Lets the chip run for a time. */
  runMs(ms: number): void {
    const end = this.cpu.cycles + (ms * CLOCK_HZ) / 1e3;
    this.runUntil(() => this.cpu.cycles >= end, ms + 1);
  }
}
