import { NONE, STATUS_TAG, statusFields } from '../../record/index.ts';
import { sectionHeading } from './text.ts';

/** How each field of the status line is written. */
const fieldTexts: Record<(typeof statusFields)[number], string> = {
  table: `addHex(TABLE, 8, 'a');`,
  start: 'addChar(startReason);',
  kept: `addChar(settingsKept ? 'k' : '${NONE}');`,
  north: 'addNumber(settings.north);',
  thresholds: `for (uint8_t pair = 0; pair < PAIRS; pair++) {
    if (pair > 0) addChar(',');
    addNumber(settings.low[pair]);
    addChar(':');
    addNumber(settings.high[pair]);
  }`,
  stuck: `for (uint8_t channel = CHANNELS; channel-- > 0;) {
    addChar((stuckChannels() >> channel) & 1 ? '1' : '0');
  }`,
};

/** The line that says which table and settings the program reads by. */
export const statusText = `${sectionHeading('Status')}

char startReason = 'u';

void writeStatus() {
  beginLine();
${[...STATUS_TAG].map((character) => `  addChar('${character}');`).join('\n')}
${statusFields.map((field) => `  addChar(' ');\n  ${fieldTexts[field]}`).join('\n')}
  endLine();
}`;
