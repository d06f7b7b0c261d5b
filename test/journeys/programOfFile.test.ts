import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { boardNamed } from '../../src/core/boards/index.ts';
import { buildCode } from '../../src/core/codes/index.ts';
import { planDisc } from '../../src/core/disc/index.ts';
import { planHead } from '../../src/core/head/index.ts';
import { readInstrument, type Instrument } from '../../src/core/instrument/index.ts';
import { programFor } from '../../src/core/program/index.ts';
import { lineCharsAtMost } from '../../src/core/record/index.ts';
import { buildAvr } from '../support/avrBuild.ts';
import { AvrChip } from '../support/avrChip.ts';
import { freshLine, setCounts } from '../support/avrVane.ts';

const path = 'examples/jetty/instrument.yaml';

/** The jetty vane of the examples; lines come fast, so that little time need be simulated. */
function jetty(): Instrument {
  const { instrument } = readInstrument(
    readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8'),
    path,
  );
  return { ...instrument, controller: { ...instrument.controller, baud: 500_000, lineIntervalMs: 4 } };
}

it('the vane of the example file reads every position of its own disc and circuit, both ways round', async () => {
  const instrument = jetty();
  const { need, site, disc } = instrument;
  const code = buildCode(disc.code, need.positions);
  const head = planHead(
    planDisc(code, disc),
    instrument.head,
    instrument.circuit,
    boardNamed('atmega328p')!,
    {
      baud: instrument.controller.baud,
      lineChars: lineCharsAtMost(code.channels.length),
      turnRateDegPerS: need.turnRateDegPerS,
    },
  );
  const chip = new AvrChip((await buildAvr(programFor(instrument, head).source)).hex);

  // Gray's formula and the geometry of the mast, worked out here: the mark under the head goes back as the vane
  // turns clockwise when the patterned face looks up.
  expect(disc.code).toBe('reflected-gray');
  const n = need.positions;
  const channels = Math.ceil(Math.log2(n));
  const first = (2 ** channels - n) / 2;
  const sense = instrument.head.patternedFace === 'up' ? -1 : 1;
  const positions = Array.from({ length: n }, (_, k) => k);
  let visited = 0;
  for (const k of [...positions, 0, ...positions.toReversed()]) {
    const gray = (first + k) ^ ((first + k) >> 1);
    for (let channel = 0; channel < channels; channel++) {
      const lit = ((gray >> (channels - 1 - channel)) & 1) === disc.windowLevel;
      setCounts(chip, channel, Math.floor(lit ? head.levels.litCounts : head.levels.darkCounts));
    }
    const heading = site.northOffsetDeg + (sense * (k + 0.5) * 360) / n;
    const line = freshLine(chip);
    const off = Math.abs(((line.headingDeg! - heading + 900) % 360) - 180);
    expect(off).toBeLessThanOrEqual(0.005 + 1e-9); // printed to 0.01
    // The very first word of this disc is dark on every channel, which could be a dead light.
    expect(line.flags).toEqual(visited++ === 0 ? ['allDark'] : []);
  }
});
