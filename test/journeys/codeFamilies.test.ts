import { describe, expect, it } from 'vitest';
import { boardNamed } from '../../src/core/boards/index.ts';
import { buildCode, families, type CodeOptions } from '../../src/core/codes/index.ts';
import { planDisc } from '../../src/core/disc/index.ts';
import { planHead } from '../../src/core/head/index.ts';
import { readInstrument } from '../../src/core/instrument/index.ts';
import { makeParts } from '../../src/core/make/index.ts';
import { prove } from '../../src/core/proof/index.ts';
import { nodeFonts } from '../../src/adapters/nodeFiles/index.ts';
import { readSvg } from '../support/svgReader.ts';

interface Shown {
  readonly family: string;
  readonly positions: number;
  readonly options?: CodeOptions;
  /** What the proof says of a carefully made disc of it. */
  readonly verdict: 'yes' | 'no';
}

/** Every family on a carefully cut disc of 200 mm with fast, well placed sensors. Invented. */
const shown: readonly Shown[] = [
  { family: 'reflected-gray', positions: 36, verdict: 'yes' },
  { family: 'long-run-gray', positions: 64, verdict: 'yes' },
  { family: 'balanced-gray', positions: 64, verdict: 'yes' },
  { family: 'single-track-gray', positions: 60, verdict: 'yes' },
  { family: 'shift-register', positions: 25, options: { clockTrack: true }, verdict: 'yes' },
  { family: 'vernier', positions: 56, verdict: 'yes' },
  { family: 'switch-ring', positions: 16, verdict: 'yes' },
  // It reads right only while it remembers: switched on, it does not know where it stands.
  { family: 'counting-wheel', positions: 32, options: { indexTrack: true }, verdict: 'no' },
  { family: 'natural-binary', positions: 32, verdict: 'no' },
];

/** Families of three colours, which other journeys carry through: examples/tricolour. */
const ofColours = ['ternary-modular', 'ternary-reflected'];

function instrumentOf({ family, positions, options = {} }: Shown) {
  const text = `vanewright: 1
name: invented ${family}
need: { positions: ${positions}, accuracyDeg: ${(1.4 * 180) / positions + 2}, turnRateDegPerS: 5 }
disc:
  code: ${family}
  codeOptions: ${JSON.stringify(options)}
  diameterMm: 200
  process: { kind: laser, edgeSdMm: 0.03, boreSdMm: 0.03, windowGrowthMm: 0 }
head:
  detector: { kind: phototransistor }
  aperture: { shape: slit, widthMm: 0.6, lengthMm: 1.5 }
  tangentialSdMm: 0.05
circuit: { input: multiplexer }
`;
  return readInstrument(text, `${family}.yaml`).instrument;
}

describe.each(shown)('a disc in $family', (wish) => {
  const instrument = instrumentOf(wish);
  const code = buildCode(wish.family, wish.positions, wish.options);
  const disc = planDisc(code, instrument.disc);
  const head = planHead(disc, instrument.head, instrument.circuit, boardNamed('atmega328p')!, {
    baud: 57600,
    lineChars: 80,
    turnRateDegPerS: 5,
  });
  const proof = prove({ instrument, disc, head, builds: 200, seed: 1 });

  it(`is proved: ${wish.verdict}`, () => {
    expect(proof.verdict, proof.reasons.join('\n')).toBe(wish.verdict);
  });

  it('is drawn so that a reader of our own finds every word in its place', async () => {
    const { files } = await makeParts({ instrument, disc, head, proof }, ['disc'], async () => ({
      paper: 'a4',
      font: await nodeFonts.sans(),
    }));
    const drawing = readSvg(String(files.find(({ path }) => path === 'disc.svg')!.content));
    // The middle of step k, clockwise from straight up, on a sheet whose y goes down.
    const seen = code.words.map((_, k) =>
      head.channels.map(({ radiusMm, angleDeg }) => {
        const turn = ((((k + 0.5) * 360) / wish.positions + angleDeg) * Math.PI) / 180;
        return drawing.isInside(radiusMm * Math.sin(turn), -radiusMm * Math.cos(turn)) ? '0' : '1';
      }),
    );
    expect(seen.map((levels) => levels.join(''))).toEqual([...code.words]);
  });
});

it('leaves no family out', () => {
  expect([...shown.map(({ family }) => family), ...ofColours].sort()).toEqual(
    families.map(({ name }) => name).sort(),
  );
});
