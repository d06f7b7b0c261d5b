import type { Instrument } from '../../instrument/index.ts';
import type { ProgramFacts } from '../facts.ts';
import { aboutText } from './about.ts';
import { averagingText } from './averaging.ts';
import { discText } from './disc.ts';
import { headingText } from './heading.ts';
import { judgingText } from './judging.ts';
import { lineText, writingText } from './line.ts';
import { jsonLineText, sentenceText } from './otherLines.ts';
import { preludeText } from './prelude.ts';
import { settingsText } from './settings.ts';
import { statusText } from './status.ts';
import { wordText } from './word.ts';

/** From counts to a line: plain C++11 that touches no hardware, the same for every chip. */
export function unitSections(facts: ProgramFacts): (string | null)[] {
  return [
    settingsText(facts),
    discText(facts),
    wordText(facts),
    judgingText(facts),
    headingText(facts),
    averagingText(facts),
    writingText(facts),
    lineText(facts),
    facts.format === 'json-lines' ? jsonLineText(facts) : null,
    facts.format === 'nmea-mwd' || facts.format === 'nmea-mwv' ? sentenceText(facts) : null,
    statusText,
  ];
}

const usage = `// Needs nothing but <stdint.h>. Call takeProgramSettings() first. Then, for each read: fill counts[], call
// judgeFirstCounts() and beginJudging() once or judgeCounts() from then on, then judgeWord(milliseconds). A write
// function leaves its text in line[], lineLength characters long.
// Compiled and run on a desk computer in the tests; never run on the board itself.`;

/** The same as a header of its own, for boards whose reading the maker writes. */
export function unitText(instrument: Instrument, facts: ProgramFacts): string {
  const sections = [aboutText(instrument, facts, '//'), usage, preludeText, ...unitSections(facts)];
  return `${sections.filter((section) => section !== null).join('\n\n')}\n`;
}
