import type { LineSource } from './lineSource.ts';

/** A serial port of this machine. */
export interface SerialPortName {
  readonly path: string;
  /** What its plug says it is; empty where it says nothing. */
  readonly label: string;
}

/** Serial ports of this machine. */
export interface SerialPorts {
  list(): Promise<readonly SerialPortName[]>;
  /** @param baud - [bit/s] */
  open(path: string, baud: number): LineSource;
}
