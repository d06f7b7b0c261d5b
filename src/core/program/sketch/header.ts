import type { Instrument } from '../../instrument/index.ts';
import type { ProgramFacts } from '../facts.ts';
import { aboutText } from '../unit/about.ts';

/** Head of the sketch. */
export function headerText(instrument: Instrument, facts: ProgramFacts): string {
  const serial = facts.wiring.board.name === 'atmega32u4' ? 'Serial1' : 'Serial';
  const deep = facts.sleep === 'deep' ? '\nextern volatile unsigned long timer0_millis;' : '';
  return `${aboutText(instrument, facts, '//')}

#include <Arduino.h>
#include <avr/eeprom.h>
${facts.sleep === 'awake' ? '' : '#include <avr/sleep.h>\n'}#include <avr/wdt.h>
#include <stddef.h>

#define SERIAL_LINE ${serial}  // ${facts.baud} bit/s, pins ${facts.wiring.board.serialPins.join(' and ')}${deep}`;
}
