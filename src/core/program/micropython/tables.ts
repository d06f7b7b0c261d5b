import type { ProgramFacts } from '../facts.ts';
import { unitFlags } from '../unit/line.ts';
import { programCheck } from '../unit/settings.ts';
import { braced } from '../unit/text.ts';

/** A tuple of values, broken into lines that fit; one value needs its comma. */
function tuple(values: readonly (number | string)[]): string {
  return braced(values)
    .replace(/^\{/, '(')
    .replace(/,?\}$/, ',)')
    .replace(/,\n,\)$/, ',\n)');
}

/** Words and their positions, as Python looks them up best. */
function wordsOf({ table }: ProgramFacts): readonly string[] {
  const rows =
    table.kind === 'dense'
      ? table.positions.flatMap((position, word) => (position === null ? [] : [[word, position]]))
      : table.words.map((word, i) => [word, table.positions[i]!]);
  return rows.map(([word, position]) => `${word}: ${position}`);
}

function edgesOf({ channels, positions }: ProgramFacts): string {
  if (positions < 4 || channels.every(({ edge }) => edge === null)) return 'EDGES = None';
  const rows = channels.map(({ edge }) =>
    edge
      ? `(${edge.darkCounts}, ${edge.litCounts}, ${tuple(edge.curve).replaceAll('\n', ' ')}, ${edge.widthHundredths}, ${edge.switchPlace})`
      : 'None',
  );
  return `# Dark and lit counts, place across an edge at equally spaced counts between them in thousandths,
# turn of an edge in hundredths of a degree, place where the channel switches.
EDGES = (
    ${rows.join(',\n    ')},
)`;
}

/** Every number of the program. */
export function tablesText(facts: ProgramFacts): string {
  const { channels, windowLevel } = facts;
  const highIsZero = channels.reduce(
    (mask, { levelWhenHigh }) => mask * 2 + (levelWhenHigh === 0 ? 1 : 0),
    0,
  );
  const words = braced(wordsOf(facts)).replace(/\s+$/, '');
  return `CHANNELS = ${channels.length}
COUNTS_MOST = ${facts.countsMost}

# A channel turns high at its upper threshold and low at its lower one; between them it stays as it was.
LOW_COUNTS = ${tuple(channels.map(({ low }) => low))}
HIGH_COUNTS = ${tuple(channels.map(({ high }) => high))}

# Added to every heading of the table, in hundredths of a degree.
NORTH = ${facts.northHundredths}

# Short name of the table, as on the certificate, and check value of thresholds and north above.
TABLE = "${facts.hash}"
PROGRAM = ${programCheck(facts)}

# Channels on which high counts are level 0 of the code, one bit each, channel 0 the highest.
HIGH_IS_ZERO = ${highIsZero}
ALL_CHANNELS = ${2 ** channels.length - 1}
ALL_LIGHT = ${windowLevel === 1 ? 2 ** channels.length - 1 : 0}

# Heading at the middle of each position before north is added, and half of its piece of the turn, in
# hundredths of a degree.
HEADING = ${tuple(facts.headingHundredths)}
HALF_WIDTH = ${tuple(facts.halfWidthHundredths)}
SLACK = ${facts.slackHundredths}

# Position of every word of the disc.
POSITION_OF_WORD = ${words}

${edgesOf(facts)}

TURN = ${facts.turnHundredthsPerS}  # fastest turn of the shaft, hundredths of a degree a second
HALF_TURN_MS = ${facts.halfTurnMs}  # after this long without a read it can stand anywhere
LINE_INTERVAL_MS = ${facts.lineIntervalMs}
AVERAGES = ${facts.averages ? 'True' : 'False'}
HAS_CUPS = ${facts.cups ? 'True' : 'False'}
RUN_PER_PULSE_MM = ${facts.cups?.runPerPulseMm ?? 'None'}
START_CM_PER_S = ${facts.cups?.startCmPerS ?? 0}
FLAGS = ${JSON.stringify(unitFlags(facts).join(''))}  # letters this program can set`;
}
