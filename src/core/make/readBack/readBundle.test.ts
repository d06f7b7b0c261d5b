import { readFileSync } from 'node:fs';
import { strToU8, zipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { exampleInstrument, plannedHead } from '../../../../test/support/plannedHead.ts';
import { prove } from '../../proof/index.ts';
import type { MadeFile } from '../madeFile.ts';
import { makeParts, partNames } from '../parts.ts';
import { bundleProblems, type WantedBundle } from './readBundle.ts';

const font = readFileSync(
  new URL('../../../../node_modules/dejavu-fonts-ttf/ttf/DejaVuSans.ttf', import.meta.url),
);

describe('a whole result, read back before it is written', () => {
  let files: readonly MadeFile[];
  let wanted: WantedBundle;
  beforeAll(async () => {
    const instrument = exampleInstrument('jetty');
    const head = plannedHead(instrument);
    const proof = prove({ instrument, disc: head.disc, head, builds: 50, seed: 1 });
    const setting = async () => ({ paper: 'a4', font }) as const;
    ({ files } = await makeParts({ instrument, disc: head.disc, head, proof }, partNames, setting));
    const { code } = head.disc;
    wanted = { code, programWords: code.words, channels: head.channels.length };
  });

  const textOf = (path: string): string => files.find((file) => file.path === path)!.content as string;
  const bytesOf = (path: string): Uint8Array =>
    files.find((file) => file.path === path)!.content as Uint8Array;
  /** Problems of everything but the zip, with one file exchanged; the zip then differs too. */
  const found = (path: string, content: MadeFile['content']) =>
    bundleProblems(
      files.map((file) => (file.path === path ? { path, content } : file)),
      wanted,
    ).filter(({ where }) => !where.startsWith('bundle.zip'));
  const told = (path: string, content: MadeFile['content']) =>
    found(path, content).map(({ where, got, allowed }) => [where, got, allowed]);

  it('is as the design says', () => {
    expect(bundleProblems(files, wanted)).toEqual([]);
    expect(files.length).toBeGreaterThan(30);
  });

  it('is refused where a table of words has one wrong', () => {
    const csv = textOf('code.csv').replace('3,33.75,45,00010', '3,33.75,45,10010');
    expect(found('code.csv', csv)).toHaveLength(1);
    const json = textOf('code.json').replace('"positions": 32', '"positions": 16');
    expect(found('code.json', json)[0]).toMatchObject({ code: 'make/file-disagrees' });
    // Gray of 31 is 10000.
    const page = textOf('how-it-works.html').replace('<td>31</td><td>10000<', '<td>31</td><td>10100<');
    expect(told('how-it-works.html', page)).toEqual([
      ['how-it-works.html, position 31', 'word 10100', 'word 10000'],
    ]);
  });

  it('is refused where the program would read a word as another position', () => {
    const path = 'program/boathouse_jetty_vane/boathouse_jetty_vane.ino';
    // Gray: word 00000 is position 0, 00001 is 1, 00010 is 3, 00011 is 2.
    const program = textOf(path).replace('{\n  0, 1, 3, 2,', '{\n  0, 1, 2, 3,');
    expect(told(path, program)).toEqual([[`${path}, position 2`, 'word 00010', 'word 00011']]);
    expect(told(path, 'void setup() {}')).toEqual([[path, 'no word', '32 words']]);
  });

  it('is refused where a solid has a gap, is turned inside out, or is empty', () => {
    const bytes = bytesOf('prints/spacer.stl');
    const count = new DataView(bytes.buffer, bytes.byteOffset).getUint32(80, true);
    const short = bytes.slice(0, bytes.length - 50);
    new DataView(short.buffer).setUint32(80, count - 1, true);
    expect(told('prints/spacer.stl', short)[0]).toEqual([
      'prints/spacer.stl',
      'a surface with a gap',
      'a closed surface',
    ]);
    const turned = bytes.slice();
    for (let facet = 0; facet < count; facet++) {
      const at = 84 + 50 * facet + 12;
      turned.set(bytes.subarray(at + 12, at + 24), at);
      turned.set(bytes.subarray(at, at + 12), at + 12);
    }
    expect(told('prints/spacer.stl', turned)[0]![1]).toMatch(/^-\d/);
    const none = bytes.slice(0, 84);
    new DataView(none.buffer).setUint32(80, 0, true);
    expect(told('prints/spacer.stl', none)[0]![1]).toBe('no triangle');
  });

  it('is refused where a 3MF holds other bodies than the STL files beside it', () => {
    const problems = found('prints/prints.3mf', bytesOf('coupon/coupon.3mf'));
    expect(problems.length).toBeGreaterThan(10);
    expect(problems[0]).toMatchObject({ got: 'no such body' });
  });

  it('is refused where the list of masses disagrees with a solid', () => {
    const masses = textOf('masses.csv').replace(/cup-hub,[\d.]+/, 'cup-hub,1.5');
    expect(found('masses.csv', masses)[0]).toMatchObject({ where: 'masses.csv, cup-hub', got: '1.5 g' });
    expect(found('parts.csv', 'quantity,part\r\n1\r\n')[0]).toMatchObject({
      where: 'parts.csv, row 2',
      got: '1 cells',
    });
  });

  it('is refused where the netlist cannot be wired', () => {
    const netlist = textOf('wiring/netlist.txt');
    const where = (text: string) => told('wiring/netlist.txt', text).map((row) => row.slice(0, 2));
    expect(where(netlist.replace(' U1.A0', ' U9.A0'))).toEqual([
      ['wiring/netlist.txt, CH0', 'an end at U9.A0'],
    ]);
    expect(where(netlist.replace(' U1.A1', ' U1.A0'))).toEqual([
      ['wiring/netlist.txt, U1.A0', 'on CH0 and on CH1'],
    ]);
    expect(where(netlist.replace('LIGHT2      RL2.2 L2.+', 'LIGHT2      RL2.2'))).toEqual([
      ['wiring/netlist.txt, LIGHT2', '1 end, RL2.2'],
    ]);
    expect(where(netlist.replaceAll(/ S3[.]\d/g, ''))).toEqual([['wiring/netlist.txt, S3', 'no wire']]);
  });

  it('is refused where a drawing is not sound or not of true size', () => {
    const svg = textOf('prints/drill-template.svg');
    expect(found('prints/drill-template.svg', svg.replace('</svg>', ''))[0]!.got).toBe(
      '<svg> that is not closed',
    );
    expect(found('prints/drill-template.svg', svg.replace('<title>', '<title>a & b'))[0]!.got).toBe(
      'a bare sign &',
    );
    const wide = svg.replace(/ width="[\d.]+mm"/, ' width="50mm"');
    expect(found('prints/drill-template.svg', wide)[0]!.got).toBe('50 mm');
  });

  it('is refused where the zip does not hold its files', () => {
    const others = files.filter(({ path }) => path !== 'bundle.zip');
    const zipOf = (entries: Record<string, Uint8Array>) =>
      bundleProblems(
        [
          { path: 'parts.csv', content: textOf('parts.csv') },
          { path: 'bundle.zip', content: zipSync(entries) },
        ],
        wanted,
      ).map(({ where, got }) => [where.replace('bundle.zip › ', ''), got]);
    expect(zipOf({})).toEqual([['parts.csv', 'no such file']]);
    expect(zipOf({ 'parts.csv': strToU8('x'), more: strToU8('') })).toEqual([
      ['parts.csv', 'other bytes'],
      ['more', 'a file too many'],
    ]);
    expect(zipOf({ 'parts.csv': strToU8(textOf('parts.csv')) })).toEqual([
      ['SHA256SUMS › parts.csv', 'no checksum'],
    ]);
    const damaged = bytesOf('bundle.zip').slice();
    damaged[200]! ^= 255;
    const problems = bundleProblems([...others, { path: 'bundle.zip', content: damaged }], wanted);
    expect(problems.some(({ got }) => got === 'other bytes than its check value says')).toBe(true);
  });
});
