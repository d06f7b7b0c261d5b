import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { admeshReport, SOUND } from './admesh.ts';
import { placeOf } from './discReadings.ts';
import { readDxf } from './dxfReader.ts';
import { ezdxfReport, MILLIMETRES } from './ezdxf.ts';
import { barMm, pageCount, renderPage, withPdf } from './pageRaster.ts';
import { filesIn, ownFolder, vanewright } from './runCli.ts';
import { readSvg } from './svgReader.ts';
import { threeMfReader } from './threeMfReader.ts';

/** Levels that a file shows at a place, y up. [mm] */
type Shown = (x: number, y: number) => readonly number[];

/** What an example's disc is, said apart from its file. */
export interface ExampleDisc {
  readonly name: string;
  /** Middles of its tracks, track 0 first. [mm] */
  readonly trackRadiiMm: readonly number[];
  /** Three colours printed, or windows cut through. */
  readonly shows: 'colours' | 'windows';
}

const DPI = 300;

/** The places of every step at which words are read: clear of both its ends. */
const SHARES = [0.1, 0.5, 0.9];

function shownBy({ shows }: ExampleDisc, svg: string, dxf: string): Record<string, Shown> {
  const drawing = readDxf(dxf);
  if (shows === 'windows') {
    const path = readSvg(svg);
    return {
      svg: (x, y) => [path.isInside(x, -y) ? 0 : 1],
      dxf: (x, y) => [drawing.isInside('cut', x, y) ? 0 : 1],
    };
  }
  const levels = [0, 1, 2];
  const paths = levels.map((level) => readSvg(svg, `disc-level-${level}`));
  return {
    svg: (x, y) => levels.filter((level) => paths[level]!.isInside(x, -y)),
    dxf: (x, y) => levels.filter((level) => drawing.isInside(`print-level-${level}`, x, y)),
  };
}

/** Has Python's own parsers read every table and every drawing: the first fault of each, and none where all is well. */
function pythonFaults(files: readonly string[]): string[] {
  const script = `
import csv, json, sys, xml.etree.ElementTree as tree
faults = []
for name in sys.argv[1:]:
    try:
        if name.endswith('.svg'): tree.parse(name)
        elif name.endswith('.json'): json.load(open(name))
        else:
            rows = list(csv.reader(open(name, newline=''), strict=True))
            if len(rows) < 2 or len({len(row) for row in rows}) != 1: raise ValueError('no table')
    except Exception as fault: faults.append(name + ': ' + str(fault))
print(json.dumps(faults))`;
  return JSON.parse(execFileSync('/usr/bin/python3', ['-c', script, ...files], { encoding: 'utf8' }));
}

/**
 * One example made by the command: its zip holds every file, and every file opens in a program that we did not write.
 */
export function foreignBundle(example: ExampleDisc): void {
  describe(`the bundle of ${example.name}`, () => {
    let folder: ReturnType<typeof ownFolder>;
    let files: string[];
    const made = (path: string): string => join(folder.path, 'unpacked', path);
    const bytesOf = (path: string) => readFileSync(made(path));
    const textOf = (path: string) => readFileSync(made(path), 'utf8');
    const ending = (end: string) => files.filter((path) => path.endsWith(end));

    beforeAll(() => {
      folder = ownFolder();
      const out = join(folder.path, 'out');
      const file = `examples/${example.name}/instrument.yaml`;
      expect(vanewright('make', file, '--out', out, '--builds', '50').exit).toBe(0);
      execFileSync('/usr/bin/python3', ['-m', 'zipfile', '-e', join(out, 'bundle.zip'), made('')]);
      files = filesIn(made(''));
    }, 120_000);
    afterAll(() => folder.end());

    it('unpacks elsewhere, with right checksums, and holds no file that nobody here opens', () => {
      const said = execFileSync('sha256sum', ['-c', 'SHA256SUMS'], { cwd: made(''), encoding: 'utf8' });
      expect(said.match(/: OK$/gm)).toHaveLength(files.length - 1);
      // Programs are compiled and run in the journeys of the program.
      const known = /[.](svg|csv|json|dxf|stl|3mf|pdf|html|txt|ino)$|^SHA256SUMS$/;
      expect(files.filter((path) => !known.test(path))).toEqual([]);
      expect(ending('.pdf').length + ending('.dxf').length).toBe(2);
    });

    it('has tables, drawings and data that the parsers of another language read', () => {
      const read = [...ending('.svg'), ...ending('.csv'), ...ending('.json')];
      expect(read.length).toBeGreaterThan(8);
      expect(pythonFaults(read.map(made))).toEqual([]);
    });

    it('shows the word of its table all round the disc, in SVG and DXF', () => {
      const { channels, words } = JSON.parse(textOf('code.json')) as {
        channels: { track: number; angleDeg: number }[];
        words: string[];
      };
      const drawn = shownBy(example, textOf('disc.svg'), textOf('disc.dxf'));
      for (const [file, shown] of Object.entries(drawn)) {
        for (const [position, word] of words.entries()) {
          for (const share of SHARES) {
            const angle = ((position + share) * 360) / words.length;
            const read = channels.map(({ track, angleDeg }) =>
              shown(...placeOf(angle + angleDeg, example.trackRadiiMm[track]!)).join('+'),
            );
            expect(read.join(''), `${file} at ${angle}`).toBe(word);
          }
        }
      }
    });

    it('has a DXF that ezdxf opens and audits', () => {
      const [report] = ezdxfReport([textOf('disc.dxf')]);
      expect(report).toMatchObject({ errors: 0, units: MILLIMETRES });
      expect(report!.area).toBeGreaterThan(1000);
    });

    it('has solids that admesh finds whole, and the same ones in 3MF by the library of that format', () => {
      const reader = threeMfReader();
      for (const path of ending('.3mf')) {
        const { warnings, unit, bodies } = reader.read(bytesOf(path));
        expect([warnings, unit, bodies.length > 0]).toEqual([0, 1, true]);
        for (const { name, isManifold, volume } of bodies) {
          const stl = `${path.slice(0, path.lastIndexOf('/') + 1)}${name}.stl`;
          const report = admeshReport(bytesOf(stl));
          expect(report, stl).toMatchObject(SOUND);
          expect(isManifold, `${path} ${name}`).toBe(true);
          expect(Math.abs(volume / report['Volume']![0]! - 1), stl).toBeLessThan(0.001);
        }
      }
      reader.close();
      // A print on card has no solids, and its sensors stand too close for printed holders.
      expect(ending('.stl').length > 0).toBe(example.shows === 'windows');
    });

    it('has a disc that a modeller takes for the same solid', () => {
      for (const path of ending('.stl').filter((name) => name === 'disc.stl')) {
        const [script, again] = [join(folder.path, 'in.scad'), join(folder.path, 'again.stl')];
        writeFileSync(script, `import(${JSON.stringify(made(path))});`);
        execFileSync('openscad', ['-o', again, script], { stdio: 'pipe' });
        const volumeOf = (bytes: Uint8Array) => admeshReport(bytes)['Volume']![0]!;
        expect(Math.abs(volumeOf(readFileSync(again)) / volumeOf(bytesOf(path)) - 1)).toBeLessThan(0.001);
      }
    });

    it('has sheets that are sound and show the bar at its true length', () => {
      const bytes = bytesOf('disc.pdf');
      const check = withPdf(bytes, (file) => execFileSync('qpdf', ['--check', file], { encoding: 'utf8' }));
      expect(check).toContain('No syntax or stream encoding errors found');
      const pages = pageCount(bytes);
      expect(pages).toBeGreaterThanOrEqual(3);
      for (let page = 1; page <= pages; page++) {
        // One pixel is 0.085 mm.
        expect(Math.abs(barMm(renderPage(bytes, page, DPI), DPI) - 100)).toBeLessThan(0.1);
      }
    }, 60_000);
  });
}
