import { CURVE_POINTS, type EdgeFacts } from '../channelFacts.ts';
import type { ProgramFacts } from '../facts.ts';
import { positionType } from './disc.ts';
import { braced, sectionHeading } from './text.ts';

/** Nearer than this to dark or lit a channel is no longer in mid-edge. [0.001] */
const MID_EDGE_FROM = 100;

/** Whether any channel's edges are known well enough to read inside a step. */
export function interpolates({ channels, positions }: ProgramFacts): boolean {
  return positions >= 4 && channels.some(({ edge }) => edge !== null);
}

/** A channel whose edges are not known: its place is never in mid-edge. */
const unknownEdge: EdgeFacts = {
  darkCounts: 0,
  litCounts: 1,
  curve: new Array<number>(CURVE_POINTS).fill(0),
  widthHundredths: 0,
  switchPlace: 0,
};

const plainText = `// Heading of this reading and how far off it may be, in hundredths of a degree.
uint16_t heading;
uint16_t headingHalfWidth;

void findHeading() {
  if (position == NO_POSITION) return;
  const uint32_t sum = (uint32_t)pgm_read_word(&HEADING[position]) + settings.north;
  heading = sum >= 36000 ? sum - 36000 : sum;
  headingHalfWidth = halfWidth(position);
}`;

/** Tables of every channel's soft edge. */
function edgeTables(facts: ProgramFacts): string {
  const edges = facts.channels.map(({ edge }) => edge ?? unknownEdge);
  const list = (pick: (edge: EdgeFacts) => number): string => braced(edges.map(pick));
  const known = facts.channels.reduce((mask, { edge }) => mask * 2 + (edge ? 1 : 0), 0);
  return `// What is known of the soft edges of each channel, from the recorded turn: counts dark and lit, the
// place across an edge at equally spaced counts between them (0 dark, 1000 lit), the turn that an
// edge takes in hundredths of a degree, and the place where the channel switches.
const uint16_t EDGE_KNOWN = ${known};
const uint16_t DARK_COUNTS[CHANNELS] PROGMEM = ${list((edge) => edge.darkCounts)};
const uint16_t LIT_COUNTS[CHANNELS] PROGMEM = ${list((edge) => edge.litCounts)};
const uint16_t CURVE[CHANNELS * ${CURVE_POINTS}] PROGMEM = ${braced(edges.flatMap((edge) => edge.curve))};
const uint16_t EDGE_WIDTH[CHANNELS] PROGMEM = ${list((edge) => edge.widthHundredths)};
const uint16_t SWITCH_PLACE[CHANNELS] PROGMEM = ${list((edge) => edge.switchPlace)};`;
}

const placeText = `const int16_t NOT_IN_EDGE = -1;
const int16_t DOUBTFUL = -2;

// Place of a channel across its edge, 0 dark to 1000 lit, or that it is not in mid-edge.
int16_t placeOf(uint8_t channel) {
  const uint16_t dark = pgm_read_word(&DARK_COUNTS[channel]);
  const uint16_t lit = pgm_read_word(&LIT_COUNTS[channel]);
  const int32_t span = lit > dark ? lit - dark : dark - lit;
  const int32_t up = lit > dark ? (int32_t)counts[channel] - dark : (int32_t)dark - counts[channel];
  if (up < -span / 4 || up > span + span / 4) return DOUBTFUL;  // the light is not what it was
  if (up <= 0 || up >= span) return NOT_IN_EDGE;
  const uint32_t scaled = up * ${CURVE_POINTS - 1};
  const uint8_t point = scaled / span;
  const uint16_t *curve = &CURVE[channel * ${CURVE_POINTS} + point];
  const uint16_t before = pgm_read_word(curve);
  const uint16_t after = pgm_read_word(curve + 1);
  const int16_t place = before + (after - before) * (scaled - point * span) / span;
  return place < ${MID_EDGE_FROM} || place > ${1000 - MID_EDGE_FROM} ? NOT_IN_EDGE : place;
}`;

function finerText(type: string): string {
  return `// Inside a step the one channel in mid-edge tells where. Two of them, a light that has changed, or an edge
// that does not lead to a neighbour are doubt, and then the middle of the step stands.
bool findFinerHeading() {
  uint8_t edge = CHANNELS;
  int16_t place = 0;
  for (uint8_t channel = 0; channel < CHANNELS; channel++) {
    if (!(EDGE_KNOWN & (1 << (CHANNELS - 1 - channel)))) continue;
    const int16_t found = placeOf(channel);
    if (found == DOUBTFUL || (found >= 0 && edge != CHANNELS)) return false;
    if (found < 0) continue;
    edge = channel;
    place = found;
  }
  if (edge == CHANNELS) return false;
  const uint16_t bit = 1 << (CHANNELS - 1 - edge);
  const ${type} other = positionOf(wordNow ^ bit);
  if (other == NO_POSITION || other == position || gapBetween(other, position) > 0) return false;

  const int32_t here = pgm_read_word(&HEADING[position]);
  int32_t ahead = (int32_t)pgm_read_word(&HEADING[other]) - here;
  if (ahead > 18000) ahead -= 36000;
  if (ahead < -18000) ahead += 36000;
  const bool isLit = !(wordNow & bit) == !(ALL_LIGHT & bit);
  const int32_t width = pgm_read_word(&EDGE_WIDTH[edge]);
  const int32_t intoLight = (place - (int16_t)pgm_read_word(&SWITCH_PLACE[edge])) * width / 1000;
  const int32_t fromEdge = (int32_t)halfWidth(position) - (isLit ? intoLight : -intoLight);
  int32_t finer = here + (ahead > 0 ? fromEdge : -fromEdge) + settings.north;
  while (finer < 0) finer += 36000;
  while (finer >= 36000) finer -= 36000;
  heading = finer;
  headingHalfWidth = width / 4;
  return true;
}`;
}

/** The heading of a line: the middle of its step, or finer where one channel stands in mid-edge. */
export function headingText(facts: ProgramFacts): string {
  const title = sectionHeading('Heading');
  if (!interpolates(facts)) return `${title}\n\n${plainText}`;
  return [title, plainText, edgeTables(facts), placeText, finerText(positionType(facts.positions).type)].join(
    '\n\n',
  );
}
