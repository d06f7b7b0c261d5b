import type { ProgramFacts } from '../facts.ts';
import { braced, sectionHeading } from './text.ts';

/** Length of a unit vector in the program. [-] */
const UNIT = 5000;

/** Time between two reads that go into the mean. [ms] */
const EVERY_MS = 10;

/** Angles whose tangents are 1, 1/2, 1/4 ... in hundredths of a degree. [0.01 deg] */
const HALVED_TANGENTS = Array.from({ length: 14 }, (_, i) =>
  Math.round((Math.atan(2 ** -i) * 18_000) / Math.PI),
);

/** What rotating by all of them makes of a length: the product of sqrt(1 + 4^-i). [-] */
const GROWTH = HALVED_TANGENTS.reduce((growth, _, i) => growth * Math.sqrt(1 + 4 ** -i), 1);

function vectorText(facts: ProgramFacts): string {
  const turns = facts.headingHundredths.map((heading) => (heading * Math.PI) / 18_000);
  const parts = (part: (turn: number) => number): string =>
    braced(turns.map((turn) => Math.round(UNIT * part(turn)) + 0)); // + 0: no minus before a zero
  return `// Parts of a vector of length ${UNIT} towards each position's heading, before north is added.
const int16_t NORTH_PART[POSITIONS] PROGMEM = ${parts(Math.cos)};
const int16_t EAST_PART[POSITIONS] PROGMEM = ${parts(Math.sin)};

int32_t northSum = 0;
int32_t eastSum = 0;
uint32_t vectors = 0;
uint32_t lastVectorMs = 0;

// A read every ${EVERY_MS} ms goes into the mean, each as a vector of the same length.
void addToMean(uint32_t nowMs) {
  if (nowMs - lastVectorMs < ${EVERY_MS}) return;
  lastVectorMs = nowMs;
  if (position == NO_POSITION) return;
  northSum += (int16_t)pgm_read_word(&NORTH_PART[position]);
  eastSum += (int16_t)pgm_read_word(&EAST_PART[position]);
  vectors++;
}`;
}

/** Direction and length of the sum by turns of known angles: whole numbers, shifts and sums only. */
const meanText = `// Angles whose tangents are 1, 1/2, 1/4 and so on, in hundredths of a degree.
const uint16_t HALVED_TANGENT[${HALVED_TANGENTS.length}] PROGMEM = ${braced(HALVED_TANGENTS)};

uint16_t mean;       // direction of the sum, in hundredths of a degree
uint16_t agreement;  // its length against that of as many equal vectors, in thousandths

// Turns the sum onto the north axis by ever smaller known angles; their total is its direction.
void findMean() {
  agreement = 0;
  if (vectors == 0) return;
  int32_t north = northSum;
  int32_t east = eastSum;
  int32_t turned = 0;
  if (north < 0) {
    north = -north;
    east = -east;
    turned = 18000;
  }
  int8_t shift = 0;
  const int32_t large = 1L << 28;
  const int32_t small = 1L << 26;
  while (north > large || east > large || east < -large) {
    north /= 2;
    east /= 2;
    shift++;
  }
  while ((north | east) != 0 && north < small && east < small && east > -small) {
    north *= 2;
    east *= 2;
    shift--;
  }
  for (uint8_t i = 0; i < ${HALVED_TANGENTS.length}; i++) {
    const int32_t northPart = north >> i;
    const int32_t eastPart = east >> i;
    const uint16_t angle = pgm_read_word(&HALVED_TANGENT[i]);
    if (east > 0) {
      north += eastPart;
      east -= northPart;
      turned += angle;
    } else {
      north -= eastPart;
      east += northPart;
      turned -= angle;
    }
  }
  uint32_t length = (uint32_t)north / 10000 * ${Math.round(10_000 / GROWTH)};
  length = shift >= 0 ? length << shift : length >> -shift;
  const uint32_t thousandth = vectors * ${UNIT / 1000};
  const uint32_t share = (length + thousandth / 2) / thousandth;
  agreement = share > 1000 ? 1000 : share;
  turned += settings.north;
  while (turned < 0) turned += 36000;
  while (turned >= 36000) turned -= 36000;
  mean = turned;
}

void forgetMean() {
  northSum = 0;
  eastSum = 0;
  vectors = 0;
}`;

const gustText = `// Pulses at each quarter of a second, twelve of them round: the gust is the most in any 3 s.
const uint8_t GUST_PARTS = 12;
uint16_t pulsesAt[GUST_PARTS];
uint8_t gustPart = 0;
uint32_t gustMs = 0;
uint16_t gust = 0;

void watchGust(uint32_t nowMs, uint16_t pulses) {
  while (nowMs - gustMs >= 250) {
    gustMs += 250;
    const uint16_t inWindow = pulses - pulsesAt[gustPart];
    if (inWindow > gust) gust = inWindow;
    pulsesAt[gustPart] = pulses;
    if (++gustPart == GUST_PARTS) gustPart = 0;
  }
}`;

/** Mean direction and gust between two lines; nothing where lines come often enough for the reader to do it. */
export function averagingText(facts: ProgramFacts): string | null {
  if (!facts.averages) return null;
  const parts = [sectionHeading('Mean and gust'), vectorText(facts), meanText];
  return (facts.cups ? [...parts, gustText] : parts).join('\n\n');
}
