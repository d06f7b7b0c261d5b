import type { AsBuilt, AsBuiltChannel } from '../asBuilt.ts';

/** A number as a file has it: never -0, never an exponent that a reader stumbles over. */
const number = (value: number): string => String(Number(value.toFixed(6)) || 0);

function channelText({ pin, litIsHigh, edgeCurve, edgeWidthDeg, ...counts }: AsBuiltChannel): string {
  const fields = [
    `pin: ${JSON.stringify(pin)}`,
    `litCounts: ${number(counts.litCounts)}`,
    `darkCounts: ${number(counts.darkCounts)}`,
    `lowCounts: ${number(counts.lowCounts)}`,
    `highCounts: ${number(counts.highCounts)}`,
    `litIsHigh: ${litIsHigh}`,
  ];
  if (edgeCurve && edgeWidthDeg !== null) {
    fields.push(`edgeCurve: [${edgeCurve.map(number).join(', ')}]`, `edgeWidthDeg: ${number(edgeWidthDeg)}`);
  }
  return `{ ${fields.join(', ')} }`;
}

/** Lines of the `asBuilt` section, without indent. */
export function asBuiltLines(asBuilt: AsBuilt): string[] {
  return [
    'asBuilt: # written by vanewright fit; turn and fit again rather than edit it',
    `  recordedAt: ${JSON.stringify(asBuilt.recordedAt)}`,
    `  tableHash: ${JSON.stringify(asBuilt.tableHash)}`,
    `  sense: ${asBuilt.sense}`,
    '  channels: # in the order of the code',
    ...asBuilt.channels.map((channel) => `    - ${channelText(channel)}`),
    '  positions: # where each word really stands',
    ...asBuilt.positions.map(
      ({ word, centreDeg, halfWidthDeg }) =>
        `    - { word: ${JSON.stringify(word)}, centreDeg: ${number(centreDeg)}, halfWidthDeg: ${number(halfWidthDeg)} }`,
    ),
  ];
}
