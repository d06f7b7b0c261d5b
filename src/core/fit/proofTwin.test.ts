import { describe, expect, it } from 'vitest';
import { designOf, turnedBy, twinFile, type Design } from '../../../test/support/fitTwin.ts';
import { draws, handText, normal } from '../../../test/support/handTurn.ts';
import { lightLevel, seenTrack, signalOf } from '../head/index.ts';
import { exactTurn } from '../proof/index.ts';
import { degToRad, radToDeg } from '../units/index.ts';
import { fitRecording, readRecording, type Fit } from './index.ts';

interface Build {
  readonly boreMm: readonly [number, number];
  readonly alongMm: readonly number[];
  readonly parts: readonly number[];
}

/** Counts of every channel by the physics that `prove` uses. */
function rows(
  { head, disc, instrument }: Design,
  build: Build,
  angles: readonly number[],
  random: () => number,
): number[][] {
  const signal = signalOf(
    head.spec.detector,
    head.levels.resistorOhm,
    instrument.circuit.sensorTo,
    head.board,
  );
  const [x, y] = build.boreMm;
  const seen = head.channels.map(({ track }) => {
    const drawn = seenTrack(disc, track, head.spec.aperture);
    const movesMm = drawn.movesMm.map(
      (move, i) =>
        move + y * Math.cos(degToRad(drawn.edgesDeg[i]!)) - x * Math.sin(degToRad(drawn.edgesDeg[i]!)),
    );
    return { ...drawn, movesMm, widestMoveMm: Math.max(...movesMm.map(Math.abs)) };
  });
  return angles.map((angle) =>
    head.channels.map(({ angleDeg, radiusMm }, c) => {
      const at = angle + angleDeg + radToDeg(build.alongMm[c]! / radiusMm);
      const counts = signal.counts(lightLevel(seen[c]!, at), build.parts[c]!, 1) + normal(random);
      return Math.min(1023, Math.max(0, Math.floor(counts)));
    }),
  );
}

function fitted(design: Design, build: Build, seed: number): Fit {
  const random = draws(seed);
  const hand = (turns: number) => ({
    turns,
    degPerS: 20,
    change: 0.3,
    phase: 6 * random(),
    perTurn: 0.8 + 0.4 * random(),
  });
  const angles = turnedBy({ sampleMs: 10 } as never, [hand(1.2), hand(-1.2)], 360 * random());
  const text = handText(rows(design, build, angles, random), 10);
  const recording = readRecording([{ name: 'turn_ccw.csv', text }], { channels: 5, scaleCounts: 1024 });
  return fitRecording(design.instrument, design.disc, design.head, recording, {
    recordedAt: '2024-05-17T10:30:00Z',
  });
}

const apart = (a: number, b: number): number => ((((a - b) % 360) + 540) % 360) - 180;

describe.each([
  ['reflected-gray', 32, 'photoresistor'],
  ['reflected-gray', 32, 'phototransistor'],
  ['single-track-gray', 30, 'phototransistor'],
] as const)(
  'a twin of %s with %i positions and %ss, by the physics of the proof',
  (code, positions, detector) => {
    const design = designOf(twinFile({ code, positions, detector }));

    it('has its words where the exact turn has them', () => {
      for (const seed of [1, 2, 3]) {
        const random = draws(seed + 40);
        const build: Build = {
          boreMm: [0.2 * normal(random), 0.2 * normal(random)],
          alongMm: design.head.channels.map(() => 0.1 * normal(random)),
          parts: design.head.channels.map(() => Math.exp(0.1 * normal(random))),
        };
        const fit = fitted(design, build, seed);
        const turn = exactTurn(design.head, build);
        const middle = (word: string): number => {
          const [up, down] = [turn.growing, turn.falling].map((way) =>
            way.find((stretch) => stretch.word === word)!,
          );
          const centres = [up!, down!].map(({ fromDeg, toDeg }) => (fromDeg + toDeg) / 2);
          return centres[0]! - apart(centres[0]!, centres[1]!) / 2;
        };
        const off = fit.asBuilt!.positions.map(({ word, centreDeg }) => apart(centreDeg, middle(word)));
        const mean = off.reduce((sum, d) => sum + d, 0) / off.length;
        const rms = Math.sqrt(off.reduce((sum, d) => sum + (d - mean) ** 2, 0) / off.length);
        expect(off).toHaveLength(positions);
        expect(rms / (360 / positions), `seed ${seed}`).toBeLessThan(0.05);
      }
    });
  },
);
