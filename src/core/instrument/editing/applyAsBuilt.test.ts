import { describe, expect, it } from 'vitest';
import { applyAsBuilt, asBuiltHash, readInstrument, startingFile, type AsBuilt } from '../index.ts';

const channel = (pin: string): AsBuilt['channels'][number] => ({
  pin,
  litCounts: 930.5,
  darkCounts: 93,
  lowCounts: 479,
  highCounts: 544,
  litIsHigh: true,
  edgeCurve: null,
  edgeWidthDeg: null,
});

function table(centreDeg = 40.5): AsBuilt {
  const bare = {
    channels: [{ ...channel('A2'), edgeCurve: [0, 0.4, 1], edgeWidthDeg: 3.4 }, channel('A0')],
    sense: 'reversed' as const,
    positions: [
      { word: '00', centreDeg, halfWidthDeg: 44 },
      { word: '01', centreDeg: 133, halfWidthDeg: 46.25 },
      { word: '11', centreDeg: 224, halfWidthDeg: 0.001 },
    ],
  };
  return { recordedAt: '2024-05-17T10:30:00Z', tableHash: asBuiltHash(bare), ...bare };
}

const start = startingFile('jetty');
const readBack = (text: string) => readInstrument(text, 'f.yaml').instrument;

describe('a file written back', () => {
  it('keeps every character of what it was, and reads back with the table', () => {
    const written = applyAsBuilt(start, 'f.yaml', table());
    expect(written.startsWith(start.trimEnd())).toBe(true);
    expect(readBack(written)).toEqual({ ...readBack(start), asBuilt: table() });
  });

  it('holds one table only, however often it is written', () => {
    const once = applyAsBuilt(start, 'f.yaml', table());
    const twice = applyAsBuilt(once, 'f.yaml', table(41));
    expect(applyAsBuilt(twice, 'f.yaml', table())).toBe(once);
    expect(readBack(twice).asBuilt!.positions[0]!.centreDeg).toBe(41);
  });

  it('keeps what stands before, behind and beside an old table', () => {
    const text = start.replace('disc:', 'asBuilt: null # not yet\n# about the disc\ndisc:');
    const written = applyAsBuilt(text, 'f.yaml', table());
    expect(written).toContain('\n# about the disc\ndisc:');
    expect(written.match(/^asBuilt:/gm)).toHaveLength(1);
    expect(readBack(written).asBuilt).toEqual(table());
  });

  it.each([
    ['line ends of another system', start.replaceAll('\n', '\r\n')],
    ['a byte order mark', `\ufeff${start}`],
    ['no last line end', start.trimEnd()],
    ['a comment at the very end', `${start}# the end`],
    [
      'JSON',
      JSON.stringify({
        vanewright: 1,
        name: 'j',
        need: { positions: 4 },
        disc: { diameterMm: 84, process: { kind: 'fdm' } },
      }),
    ],
  ])('may have %s', (_, text) => {
    const written = applyAsBuilt(text, 'f.yaml', table());
    expect(readBack(written)).toEqual({ ...readBack(text), asBuilt: table() });
    expect(written.includes('\r\n')).toBe(text.includes('\r\n'));
    if (text.includes('# the end')) expect(written).toContain('# the end');
  });

  it('is refused when it could not be read before', () => {
    expect(() => applyAsBuilt('name: x', 'f.yaml', table())).toThrow('instrument/');
  });
});
