import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { nodeInstrumentFiles, nodeOutputFolder } from '../../src/adapters/nodeFiles/index.ts';
import { fitCups, type CupsRequest } from '../../src/app/api.ts';
import { readInstrument, startingFile } from '../../src/core/instrument/index.ts';
import { draws, normal } from '../support/handTurn.ts';
import { filesIn, ownFolder, vanewright } from '../support/runCli.ts';
import { textOf } from '../support/sourceFiles.ts';

const isOutput = new Ajv2020({ allowUnionTypes: true }).compile(
  JSON.parse(textOf('schema/output.schema.json')),
);

/** The invented cups: speed = 0.25 m/s + 0.75 m x rate, standing below 0.6 m/s. */
const rateAt = (speed: number): number => (speed < 0.6 ? 0 : (speed - 0.25) / 0.75);

/** Edges of a contact that closes twice a turn, 10 turns by hand, each edge bouncing for up to 0.6 ms. */
function edgesFile(): string {
  const random = draws(4);
  const times = Array.from({ length: 40 }, (_, i) => 120_000 * (i + 0.2 * random())).flatMap((at) => [
    at,
    at + 100 + 100 * random(),
    at + 300 + 300 * random(),
  ]);
  return `edge_us\n${times.map((us) => us.toFixed(0)).join('\n')}\n`;
}

/** Ten hours of changing wind beside a reference, a row every ten seconds. */
function besideFile(): string {
  const random = draws(1);
  let pulses = 0;
  const rows = Array.from({ length: 3600 }, (_, i) => {
    const speed = 6 - 6 * Math.cos((2 * Math.PI * 10 * i) / 7200);
    pulses += 10 * rateAt(speed);
    return `${10 * i};${Math.floor(pulses)};${Math.max(0, speed + 0.3 * normal(random))
      .toFixed(3)
      .replace('.', ',')}`;
  });
  return `time_s;pulses;speed_m_s\n${[...rows.slice(0, 99), 'power off', ...rows.slice(99)].join('\n')}\n`;
}

/** A car out and back on a road to the north at five speeds, 3 m/s of wind from the north; clocks 12 s apart. */
function carFiles(): { count: string; track: string } {
  const count: string[] = ['time_ms,pulses'];
  const track: string[] = ['time_s,latitude_deg,longitude_deg'];
  let [north, now, pulses, t] = [0, 0, 0, 0];
  for (const way of [1, -1]) {
    for (const goal of [6, 10, 14, 18, 22]) {
      for (let s = 0; s < 450; s++, t++) {
        now += Math.max(-0.3, Math.min(0.25, (s > 370 ? 0 : goal) - now));
        north += way * now * 0.1;
        pulses += 0.1 * rateAt(Math.abs(way * now + 3));
        if (t % 5 === 0) count.push(`${100 * t},${Math.floor(pulses)}`);
        if (t % 10 === 0)
          track.push(
            `${(t / 10 + 12).toFixed(1)},${(53 + (north / 6_371_000) * (180 / Math.PI)).toFixed(8)},10`,
          );
      }
    }
  }
  return { count: count.join('\n'), track: track.join('\r\n') };
}

/** Speed = 0.8 m x rate - 0.5 m/s, which no cups have. */
function belowFile(): string {
  const rows = Array.from({ length: 1900 }, (_, i) => {
    const s = i + 100;
    return `${s},${Math.floor((s * s) / 200)},${(0.008 * s - 0.5).toFixed(3)}`;
  });
  return `time_s,pulses,speed_m_s\n${rows.join('\n')}\n`;
}

interface CupsFound {
  readonly line: {
    offsetMPerS: number;
    offsetErrorMPerS: number;
    pathPerPulseM: number;
    pathErrorM: number;
    car: { windMPerS: number };
  };
  readonly turn: { pulsesPerTurn: number };
  readonly leftOut: { lines: number[] }[];
}

describe('vanewright fit cups', () => {
  let folder: ReturnType<typeof ownFolder>;
  let file: string;
  const path = (name: string) => join(folder.path, name);
  const found = (...words: string[]): CupsFound => {
    const document = JSON.parse(vanewright('fit', 'cups', file, ...words, '--json').out) as unknown;
    expect(isOutput(document), JSON.stringify(isOutput.errors)).toBe(true);
    return document as CupsFound;
  };
  beforeAll(() => {
    folder = ownFolder();
    file = path('instrument.yaml');
    writeFileSync(file, startingFile('invented jetty'));
    writeFileSync(path('edges.csv'), edgesFile());
    writeFileSync(path('beside.csv'), besideFile());
    writeFileSync(path('count.csv'), carFiles().count);
    writeFileSync(path('track.csv'), carFiles().track);
  });
  afterAll(() => {
    folder.end();
  });

  it('tells pulses a turn from counting, and from bouncing edges', () => {
    expect(vanewright('fit', 'cups', file, '--turns', '10', '--pulses', '20').out).toContain(
      'pulses a turn    2',
    );
    const { out } = vanewright('fit', 'cups', file, '--turns', '10', '--edges', path('edges.csv'));
    expect(out).toContain('pulses a turn    2, from 20 pulses in 10 turns');
    expect(out).toMatch(/quiet time {7}\d+ us/);
    expect(out.match(/#+$/gm)!.length).toBeGreaterThan(2);
  });

  it('fits the line beside a reference within its standard errors, and names the line it left out', () => {
    const both = path('beside.csv');
    const { line, leftOut } = found('--count', both, '--reference', both);
    expect(Math.abs(line.pathPerPulseM - 0.75)).toBeLessThan(4 * line.pathErrorM + 0.002);
    expect(Math.abs(line.offsetMPerS - 0.25)).toBeLessThan(4 * line.offsetErrorMPerS + 0.02);
    expect(leftOut[0]!.lines).toEqual([101]);
  });

  it('fits a car run both ways, with the wind over the road taken out', () => {
    const { line } = found('--count', path('count.csv'), '--track', path('track.csv'));
    expect(Math.abs(line.pathPerPulseM / 0.75 - 1)).toBeLessThan(0.02);
    expect(Math.abs(line.car.windMPerS - 3)).toBeLessThan(0.5);
  });

  it('writes what it found into the file, comments kept, and a picture of what is left', () => {
    const own = path('own.yaml');
    writeFileSync(
      own,
      startingFile('own').replace('cups: null', 'cups: { pulsesPerTurn: 1, pin: D2 } # the reed'),
    );
    const both = path('beside.csv');
    const words = [
      '--count',
      both,
      '--reference',
      both,
      '--turns',
      '10',
      '--pulses',
      '20',
      '--edges',
      path('edges.csv'),
    ];
    const { exit } = vanewright('fit', 'cups', own, ...words, '--write', '--out', path('out'));
    expect(exit).toBe(0);
    expect(filesIn(path('out'))).toContain('residuals.svg');
    const text = readFileSync(own, 'utf8');
    expect(text).toContain('} # the reed');
    const { cups } = readInstrument(text, own).instrument;
    expect(cups).toMatchObject({ pulsesPerTurn: 2, pin: 'D2' });
    expect(Math.abs(cups!.runPerPulseM! - 0.75)).toBeLessThan(0.02);
    expect(Math.abs(cups!.startSpeedMPerS - 0.25)).toBeLessThan(0.15);
  });

  const nothing: CupsRequest = {
    path: '',
    edges: null,
    turns: null,
    pulses: null,
    count: null,
    reference: null,
    track: null,
    blockS: 60,
    write: true,
    out: null,
  };

  it.each([
    ['nothing to fit by', {}, 'fit/cups-words'],
    ['turns without pulses', { turns: 10 }, 'fit/cups-words'],
    ['pulses that are not whole', { turns: 10, pulses: 15 }, 'fit/pulses-not-whole'],
    ['a count with nothing beside it', { count: 'beside.csv' }, 'fit/cups-words'],
    ['a file without the column', { edges: 'beside.csv' }, 'fit/no-column'],
    ['a file of words', { edges: 'words.csv' }, 'fit/rows-unread'],
    ['a line below zero', { count: 'below.csv', reference: 'below.csv' }, 'fit/offset-below-zero'],
    ['a car run one way', { count: 'count.csv', track: 'oneway.csv' }, 'fit/one-way-only'],
  ] satisfies [string, Partial<CupsRequest>, string][])(
    'refuses %s, and leaves the file as it was',
    async (_, words, code) => {
      writeFileSync(path('words.csv'), `edge_us\n${'many words\n'.repeat(50)}`);
      writeFileSync(path('below.csv'), belowFile());
      writeFileSync(path('oneway.csv'), carFiles().track.split('\r\n').slice(0, 226).join('\n'));
      const named = Object.entries(words).map(([name, value]) => [
        name,
        typeof value === 'string' ? path(value) : value,
      ]);
      const request: CupsRequest = {
        ...nothing,
        ...(Object.fromEntries(named) as Partial<CupsRequest>),
        path: file,
      };
      const ports = { files: nodeInstrumentFiles, output: nodeOutputFolder };
      await expect(fitCups(ports, request, new AbortController().signal)).rejects.toThrow(code);
      expect(readFileSync(file, 'utf8')).toBe(startingFile('invented jetty'));
    },
  );
});
