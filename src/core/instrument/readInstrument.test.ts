import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { UNMEASURED } from '../disc/index.ts';
import { readInstrument } from './index.ts';

const jetty = readFileSync(new URL('../../../examples/jetty/instrument.yaml', import.meta.url), 'utf8');
const SMALLEST = `vanewright: 1
name: my vane
need: { positions: 32 }
disc: { diameterMm: 84, process: { kind: fdm } }
`;

/** The instrument of the smallest file with some lines after it. */
function read(more = '', base = SMALLEST) {
  return readInstrument(base + more, 'f.yaml').instrument;
}

describe('the smallest instrument file', () => {
  it('is a printed vane that lacks nothing', () => {
    expect(read()).toEqual({
      name: 'my vane',
      need: {
        positions: 32,
        accuracyDeg: 11.25,
        turnRateDegPerS: 45,
        turnRangeDeg: 360,
        mustSurvivePowerLoss: true,
        wantedYield: 0.95,
      },
      sensing: {
        turnedBy: 'wind',
        shaftEnd: 'free',
        startTorqueNmm: 0.1,
        lifeYears: 5,
        budgetEur: 60,
        tools: ['fdm-printer', 'soldering-iron', 'multimeter'],
        powerCutsPerYear: 12,
        turnsPerDay: null,
        mustShowFaults: false,
      },
      disc: {
        code: 'reflected-gray',
        codeFile: null,
        codeOptions: {},
        diameterMm: 84,
        bore: { shape: 'round', diameterMm: 5 },
        hub: { kind: 'plain' },
        hubDiameterMm: 29.4, // 0.35 × 84
        thicknessMm: 2,
        webMm: 1.2, // 1.5 × 0.8
        rimMm: 2.4, // 2 × 1.2
        finest: 'outside',
        windowLevel: 1,
        notch: { widthMm: 2, depthMm: 1.2 },
        process: {
          kind: 'fdm',
          minWindowMm: 1,
          minLandMm: 0.8,
          minWebMm: 0.8,
          edgeSdMm: 0.1,
          windowGrowthMm: -0.2,
          boreSdMm: 0.1,
          colourCount: 16,
          measured: UNMEASURED,
        },
      },
      head: {
        detector: {
          kind: 'photoresistor',
          litOhm: 2000,
          darkOhm: 200000,
          gamma: 0.7,
          riseMs: 20,
          fallMs: 30,
          spread: 0.25,
        },
        light: { kind: 'led', currentMa: 10, wavelengthNm: 525 },
        aperture: { shape: 'slit', widthMm: 1.2, lengthMm: 2 },
        tangentialSdMm: 0.2,
        radialSdMm: 0.2,
        penumbra: null,
        leak: null,
        daylightShare: 0,
        climate: { coldestC: -10, hottestC: 40, monthsBetweenSettings: 12 },
        tiltSdDeg: 0.5,
        shaftPlaySdMm: 0.02,
        northSdDeg: 0,
        patternedFace: 'up',
        staggerDeg: 0,
        edgeCorrection: 'none',
      },
      circuit: {
        input: 'direct',
        gate: 'comparator',
        ladder: { kind: 'r-2r', smallestOhm: 10_000, tolerancePercent: 1, ppmPerK: 100 },
        emitters: 'steady',
        resistorOhm: null,
        resistorTolerancePercent: 5,
        sensorTo: 'supply',
        thresholds: 'per-channel',
        hysteresisCounts: null,
        noiseCounts: 1,
      },
      controller: {
        board: 'atmega328p',
        channelPins: null,
        baud: 57600,
        format: 'text',
        lineIntervalMs: 250,
      },
      cups: null,
      power: {
        sleep: 'awake',
        battery: null,
        regulator: 'linear',
        boardMa: null,
        sunHoursPerDay: null,
        darkDays: 5,
      },
      site: {
        place: 'not stated',
        latitudeDeg: null,
        longitudeDeg: null,
        mastHeightM: 3,
        northOffsetDeg: 0,
        northHistory: [],
        wind: { sectorShares: null, weatherHours: 48, hourChangeDeg: 25, swingDeg: 15, calmShare: 0.1 },
        strayFieldMt: 0.05,
      },
      parts: {
        sensorPart: 'photoresistor-5mm',
        lightPart: 'round-3mm',
        laserTube: { diameterMm: 6, heldMm: 12 },
        airGapMm: 1.5,
        gland: 'M12',
        bedMm: 200,
        layerMm: 0.2,
        vane: {
          damping: 0.3,
          startMPerS: 0.5,
          startWithinDeg: 5,
          frictionNmm: 0.1,
          finThicknessMm: 0.6,
          aspectRatio: 2,
          longestArmMm: 600,
        },
        cups: { cups: 3, mouthMm: 50, radiusMm: 70, wallMm: 1.2 },
      },
      asBuilt: null,
    });
  });

  it('draws for what was measured on the coupon, and then expects windows as wanted', () => {
    const measured = 'measured: { slotMm: 1.7, landMm: 2.3, footMm: 0.3, narrowestSlotMm: 0.8 }';
    const { disc } = read('', SMALLEST.replace('kind: fdm', `kind: fdm, ${measured}`));
    expect(disc.process).toMatchObject({ windowGrowthMm: 0, minLandMm: 0.8 });
    expect(disc.process.minWindowMm).toBeCloseTo(0.5, 12); // 0.8 drawn came out 0.3 mm narrower
    expect(disc.drawn).toMatchObject({ scale: 1, footGrowthMm: 0.15 });
    expect(disc.drawn!.edgeLossMm).toBeCloseTo(-0.15, 12);
  });

  it('takes other defaults for another process or sensor', () => {
    const film = read('', SMALLEST.replace('fdm', 'film'));
    expect(film.disc).toMatchObject({ thicknessMm: 0.1, webMm: 0.465, rimMm: 2, notch: { depthMm: 1 } });
    const silicon = read('head: { detector: { kind: phototransistor } }\n');
    expect(silicon.head.light).toMatchObject({ kind: 'led', wavelengthNm: 950 });
    expect(silicon.head.detector).toMatchObject({ litMa: 0.5, saturationV: 0.4, riseMs: 0.015 });
  });

  it("follows the maker's own web when it sizes the rim, and their own process when it sizes the web", () => {
    const base = SMALLEST.replace('kind: fdm', 'kind: laser, minWebMm: 2');
    expect(read('', base).disc).toMatchObject({ webMm: 3, rimMm: 6 });
    expect(read('', base.replace('84,', '84, webMm: 0,')).disc).toMatchObject({ webMm: 0, rimMm: 2 });
  });

  it('has a hub that leaves five millimetres of wall round any bore', () => {
    const base = SMALLEST.replace('84,', '40, bore: { shape: round, diameterMm: 20 },');
    expect(read('', base).disc.hubDiameterMm).toBe(30);
  });

  it('has cups of one pulse a turn on the first interrupt pin once they are named', () => {
    expect(read('cups: {}\n').cups).toMatchObject({ pulsesPerTurn: 1, pin: 'D2', quietUs: 1500 });
    expect(read('cups:\n').cups).toBeNull();
  });

  it('accepts a strong or unseen laser only when the maker says so', () => {
    const light = 'kind: laser, powerMw: 5, wavelengthNm: 850, acceptHazard: true';
    expect(read(`head: { light: { ${light} } }\n`).head.light).toMatchObject({
      powerMw: 5,
      acceptHazard: true,
    });
  });
});

describe('a resolution in place of a count', () => {
  it.each([
    [11.25, 32],
    [11.2, 34],
    [11, 34],
    [10, 36],
    [0.1, 3600],
    [360 / 4096, 4096],
    [180, 2],
    [100, 4],
  ])('of %d degrees asks for %i positions', (resolution, positions) => {
    expect(read('', SMALLEST.replace('positions: 32', `resolutionDeg: ${resolution}`)).need.positions).toBe(
      positions,
    );
  });

  it('may stand beside a count that is as fine or finer', () => {
    const base = SMALLEST.replace('positions: 32', 'positions: 36, resolutionDeg: 11.25');
    expect(read('', base).need).toMatchObject({ positions: 36, accuracyDeg: 10 });
  });
});

describe('the same instrument', () => {
  const reference = readInstrument(jetty, 'jetty').instrument;

  it.each([
    ['with a byte order mark', `\ufeff${jetty}`],
    ['with line ends CR LF', jetty.replaceAll('\n', '\r\n')],
    ['with line ends CR', jetty.replaceAll('\n', '\r')],
    ['without a last line end', jetty.trimEnd()],
    ['between document marks', `---\n${jetty}...\n`],
  ])('reads %s', (_, text) => {
    expect(readInstrument(text, 'jetty').instrument).toEqual(reference);
  });

  it('reads as JSON, indented with spaces or tabs', () => {
    const file = { vanewright: 1, ...reference };
    for (const indent of [undefined, 2, '\t']) {
      expect(readInstrument(JSON.stringify(file, null, indent), 'jetty.json').instrument).toEqual(reference);
    }
  });

  it('reads with a value copied from above', () => {
    const base = SMALLEST.replace('diameterMm: 84', 'diameterMm: 84, webMm: &wall 1.3, rimMm: *wall');
    expect(read('', base).disc).toMatchObject({ webMm: 1.3, rimMm: 1.3 });
  });

  it('reads a copy as what the name meant there, though it is given anew below', () => {
    const base = SMALLEST.replace(
      'diameterMm: 84',
      'webMm: &a 1.3, rimMm: *a, diameterMm: &a 84, hubDiameterMm: 40',
    );
    expect(read('', base).disc).toMatchObject({ webMm: 1.3, rimMm: 1.3, diameterMm: 84 });
  });
});

describe('the place of a field', () => {
  const { placeOf } = readInstrument(
    [
      'vanewright: 1',
      'name: x',
      'need: { positions: 32 }',
      'disc:',
      '  bore: { shape: round, diameterMm: 5 }',
    ]
      .concat('  diameterMm: 84', '  process:', '    kind: fdm', 'controller:', '  channelPins:')
      .concat('    - A0', '    - A1', '    - A2', '    - A3', '    - A4')
      .join('\n'),
    'my vane.yaml',
  );

  it.each([
    ['need.positions', '3:20'],
    ['disc.bore.diameterMm', '5:37'],
    ['disc.bore', '5:3'],
    ['disc.process.kind', '8:11'],
    ['controller.channelPins[3]', '14:7'],
  ])('%s is where its value begins', (path, place) => {
    expect(placeOf(path)).toBe(`my vane.yaml:${place} › ${path}`);
  });

  it.each([
    ['disc.webMm', '4:1'],
    ['disc.process.edgeSdMm', '7:3'],
    ['controller.channelPins[7]', '10:3'],
    ['head.detector.litOhm', '1:1'],
    ['not a path at all', '1:1'],
  ])('%s, which is not written, is where its nearest written group begins', (path, place) => {
    expect(placeOf(path)).toBe(`my vane.yaml:${place} › ${path}`);
  });
});
