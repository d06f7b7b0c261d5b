import { beforeAll, describe, expect, it } from 'vitest';
import { fitRecording, readRecording, type Fit } from '../../src/core/fit/index.ts';
import { applyAsBuilt, headingOfDiscAngle, readInstrument } from '../../src/core/instrument/index.ts';
import { programFor } from '../../src/core/program/index.ts';
import { buildAvr } from '../support/avrBuild.ts';
import { AvrChip } from '../support/avrChip.ts';
import { freshLine, setCounts } from '../support/avrVane.ts';
import { builtBy, designOf, recordedText, turnedBy, twinFile } from '../support/fitTwin.ts';
import { draws, handRows, type HandBuild } from '../support/handTurn.ts';

/** Invented: lines as often as may be, so that little time need be simulated. */
const FILE = twinFile().replace('lineIntervalMs: 250', 'lineIntervalMs: 20, baud: 115200');

/** The recording as a serial monitor saved it: rubbish, a restart, a spoilt line, a gap. */
function withMess(text: string): string {
  const [heading, ...rows] = text.split('\n');
  const spoilt = rows.map((row, i) =>
    i % 211 === 50 ? row.slice(0, 7) : i % 307 === 20 ? `${row}${rows[i + 1]}` : row,
  );
  const half = Math.floor(spoilt.length / 2);
  return [
    '\u00ff\u00fe~x\u0080,,3',
    'Vane ready',
    heading!,
    ...spoilt.slice(0, half),
    'Vane ready',
    heading!,
    ...spoilt.slice(half),
    rows.at(-1)!.slice(0, 4),
  ].join('\n');
}

const apart = (a: number, b: number): number => Math.abs(((((a - b) % 360) + 540) % 360) - 180);

describe.each([
  ['fast sensors', 'phototransistor', (light: number) => light],
  // A divider of the best resistor with a cell of gamma 0.7 and a hundredfold of resistance: 1/(1 + k^½ …) rescaled to 0..1.
  ['photoresistors', 'photoresistor', cellCurve],
] as const)('a faulty build with %s', (_, detector, curve) => {
  const design = designOf(FILE.replace('kind: phototransistor', `kind: ${detector}`));
  const faults = {
    columns: [0, 3, 2, 1, 4],
    inverted: [2],
    boreMm: [0.3 * Math.cos(2), 0.3 * Math.sin(2)] as const,
    litCounts: { 4: 420 },
    edgeSdMm: 0.02,
  };
  let build: HandBuild;
  let fit: Fit;
  let chip: AvrChip;
  let written: string;

  beforeAll(async () => {
    const random = draws(77);
    build = { ...builtBy(design, { ...faults, random }), curve };
    const hand = (turns: number) => ({
      turns,
      degPerS: 15,
      change: 0.3,
      phase: 1,
      stops: [{ afterDeg: 130, seconds: 1.5 }],
    });
    const text = (turns: number, start: number): string =>
      withMess(recordedText(build, turnedBy(build, [hand(turns)], start), random, ';'));
    const recording = readRecording(
      [
        { name: 'jetty ccw.csv', text: text(2.2, 25) },
        { name: 'jetty cw.csv', text: text(-1.3, 300) },
      ],
      { channels: 5, scaleCounts: 1024 },
    );
    fit = fitRecording(design.instrument, design.disc, design.head, recording, {
      recordedAt: '2024-05-17T10:30:00Z',
    });
    written = applyAsBuilt(design.text, 'twin.yaml', fit.asBuilt!);
    const { instrument } = readInstrument(written, 'twin.yaml');
    const { source } = programFor(instrument, design.head);
    chip = new AvrChip((await buildAvr(source)).hex);
  });

  it('is explained completely', () => {
    expect(fit.verdict).toBe('yes');
    const found = new Map(fit.causes.map((cause) => [cause.kind, cause.channels]));
    expect(found.get('swapped')).toEqual([1, 3]);
    expect(found.get('inverted')).toEqual([2]);
    expect(found.get('weak')).toEqual([4]);
    expect(found.has('bore')).toBe(true);
    expect(fit.recording.repairs.length).toBeGreaterThan(10);
  });

  it('keeps the comments of its file', () => {
    expect(written).toContain('# of a vane on a boathouse jetty');
  });

  it('reads within the stated error on the emulated chip, all the way round', () => {
    const random = draws(5);
    const { maxDeg } = fit.disc!.tableError;
    const errors: number[] = [];
    for (let angle = 1; angle < 360; angle += 7.3) {
      const [row] = handRows({ ...build, noiseCounts: 0 }, [angle], random);
      for (const [pin, counts] of row!.entries()) setCounts(chip, pin, counts);
      chip.runMs(3);
      const line = freshLine(chip, 200);
      expect(line.headingDeg, `at disc angle ${angle}`).not.toBeNull();
      errors.push(apart(line.headingDeg!, headingOfDiscAngle(design.instrument, angle)));
    }
    console.log(`on the chip: ${Math.max(...errors).toFixed(2)} of ${maxDeg.toFixed(2)} degrees`);
    expect(errors).toHaveLength(50);
    expect(Math.max(...errors)).toBeLessThan(maxDeg);
    expect(maxDeg).toBeLessThan(7.5);
  });
});

/** Share of the swing that a photoresistor in its best divider makes of a share of light. */
function cellCurve(light: number): number {
  const [lit, dark, gamma] = [2_000, 200_000, 0.7];
  const stray = (lit / dark) ** (1 / gamma);
  const ohm = lit * (stray + light * (1 - stray)) ** -gamma;
  const fixed = Math.sqrt(lit * dark);
  const fraction = (r: number): number => fixed / (fixed + r);
  return (fraction(ohm) - fraction(dark)) / (fraction(lit) - fraction(dark));
}
