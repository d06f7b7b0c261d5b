import type { Instrument } from '../../instrument/index.ts';
import type { ProgramFacts } from '../facts.ts';
import { unitSections } from '../unit/unit.ts';
import { circuitText } from './circuit.ts';
import { commandsText } from './commands.ts';
import { cupsText } from './cups.ts';
import { headerText } from './header.ts';
import { keepingText } from './keeping.ts';
import { loopText } from './loop.ts';
import { readingText } from './reading.ts';
import { sleepingText } from './sleeping.ts';

/** The whole sketch: C++11, nothing but the board's own core, one file. */
export function sketchText(instrument: Instrument, facts: ProgramFacts): string {
  const sections = [
    headerText(instrument, facts),
    ...unitSections(facts),
    circuitText(facts),
    readingText(facts),
    cupsText(facts),
    keepingText,
    commandsText,
    loopText(facts).replace('@SLEEP@', () => sleepingText(facts) ?? ''),
  ];
  return `${sections.filter((section) => section !== null).join('\n\n')}\n`;
}
