import type { Instrument } from '../../instrument/index.ts';
import type { ProgramFacts } from '../facts.ts';
import { aboutText } from '../unit/about.ts';
import { decodingText } from './decoding.ts';
import { hardwareText } from './hardware.ts';
import { linesText } from './lines.ts';
import { tablesText } from './tables.ts';

const checkedText = `def checked(text):
    return "%s %04X" % (text, check_of(0xFFFF, text.encode()))`;

/** Name of the instrument as SenML allows it. */
function baseNameOf(name: string): string {
  const plain = name
    .normalize('NFKD')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return `${plain.slice(0, 40) || 'vane'}:`;
}

/** The whole program for boards with MicroPython: one file, nothing but the board's own library. */
export function micropythonText(instrument: Instrument, facts: ProgramFacts): string {
  return `${aboutText(instrument, facts, '#')}
# Lines leave through the board's own serial line or USB, ${facts.baud} bit/s where that counts.

import machine
import math
import os
import select
import sys
import time

${tablesText(facts)}


${decodingText}
${linesText(facts, baseNameOf(instrument.name))}


${checkedText}


${hardwareText(facts)}


if __name__ == "__main__":
    run()
`;
}
