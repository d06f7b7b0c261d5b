import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { exampleInstrument, plannedHead } from '../../../test/support/plannedHead.ts';
import { problemsOf } from '../../../test/support/problemsOf.ts';
import { prove } from '../proof/index.ts';
import { photoFiles, publishKit, type KitRequest } from './index.ts';

const instrument = exampleInstrument('jetty');
const head = plannedHead(instrument);
const design = { instrument, head, proof: prove({ instrument, disc: head.disc, head, builds: 20, seed: 1 }) };
const jpeg = new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 1, 2]);
const none: KitRequest = {
  design,
  ...{ sources: [{ path: 'instrument.yaml', content: 'vanewright: 1\n' }], made: [], certificate: null },
  ...{ photos: [], licences: [], by: null },
};
const made = [
  { path: 'disc.svg', content: '<svg/>' },
  { path: 'program/vane.ino', content: 'void loop() {}' },
  { path: 'how-it-works.html', content: '<!doctype html>' },
  { path: 'LICENCES.txt', content: 'choose one' },
  { path: 'bundle.zip', content: new Uint8Array([1]) },
];
const textIn = (request: KitRequest, path: string): string =>
  publishKit(request).files.find((file) => file.path === path)!.content as string;

const certificate = { name: instrument.name, recordedAt: '2026-05-01T10:00:00.000Z', tableHash: 'abc12345' };
const row = { figure: 'Largest error, read by the table', found: '6.1°', needed: 'at most 8°', passes: true };
const given = (json: string) => ({
  json,
  html: '<!doctype html>',
  pdf: new Uint8Array([37]),
  from: 'fitted',
});
const levels = { litCounts: 900, darkCounts: 90, lowCounts: 400, highCounts: 600, litIsHigh: true } as const;
const channels = ['A0', 'A1', 'A2', 'A3', 'A4'].map((pin) => ({
  ...{ pin, ...levels, edgeCurve: null, edgeWidthDeg: null },
}));
const measured = {
  ...instrument,
  asBuilt: { recordedAt: '', tableHash: 'abc12345', channels, sense: 'same', positions: [] } as const,
};

describe('a kit', () => {
  it('holds all that is made in its place, and one page first', () => {
    const { files } = publishKit({ ...none, made, photos: [{ file: 'disc.jpg', bytes: jpeg }] });
    expect(files.map(({ path }) => path)).toEqual([
      ...['index.html', 'how-it-works.html', 'LICENCES.txt', 'tested-with.json', 'photos/disc.jpg'],
      ...['files/instrument.yaml', 'files/disc.svg', 'files/program/vane.ino', 'kit.zip'],
    ]);
  });

  it('is the same to the last byte when made again', () => {
    const zip = () => publishKit({ ...none, made }).files.at(-1)!.content as Uint8Array;
    expect(Buffer.compare(zip(), zip())).toBe(0);
  });

  it('holds every file in its zip, as another program lists them', () => {
    const { files } = publishKit({ ...none, made });
    const script =
      'import sys, io, zipfile; print("\\n".join(zipfile.ZipFile(io.BytesIO(sys.stdin.buffer.read())).namelist()))';
    const listed = execFileSync('/usr/bin/python3', ['-c', script], { input: files.at(-1)!.content });
    const inside = files.slice(0, -1).map(({ path }) => path);
    expect(String(listed).trim().split('\n')).toEqual([...inside, 'SHA256SUMS']);
  });
});

describe('the page of a kit', () => {
  it('lists every file with what it is and its licence', () => {
    const page = textIn({ ...none, made, licences: ['MIT', 'CC0-1.0'] }, 'index.html');
    expect(page).toContain('href="files/program/vane.ino"');
    expect(page).toMatch(/vane[.]ino<\/a><\/td><td>program for the controller<\/td><td>14 B<\/td><td>MIT</);
    expect(page).toMatch(/disc[.]svg<\/a><\/td><td>the disc, to cut or print<\/td><td>6 B<\/td><td>CC0-1.0</);
    expect(page).toContain('Power lines');
    expect(page.match(/(?:src|href)="https?:/g)).toBeNull();
  });

  it('makes hostile names inert', () => {
    const hostile = '"><script>alert(1)</script>';
    const page = textIn(
      { ...none, by: hostile, design: { ...design, instrument: { ...instrument, name: hostile } } },
      'index.html',
    );
    expect(page).not.toContain('<script');
    expect(page).toContain("default-src 'none'");
  });

  it('shows the photos there are and tells how to take the others', () => {
    const page = textIn({ ...none, photos: [{ file: 'disc.jpg', bytes: jpeg }] }, 'index.html');
    expect(page).toContain('src="photos/disc.jpg"');
    expect(page).not.toContain('<td>photos/disc.jpg</td>');
    expect(page).toContain('<td>photos/head.jpg</td>');
    expect(photoFiles).toContain('head.png');
  });

  it('says that nothing was measured where nothing was', () => {
    expect(textIn(none, 'index.html')).toContain('none is measured');
  });
});

describe('what others may do', () => {
  it('is said for every kind of file, and that nobody may copy what has no licence', () => {
    const { terms } = publishKit({ ...none, licences: ['CERN-OHL-S-2.0', 'MIT'], by: 'A. Maker' });
    expect(terms.map(({ kind, licence }) => [kind, licence?.spdx ?? null])).toEqual([
      ...[
        ['drawings', 'CERN-OHL-S-2.0'],
        ['program', 'MIT'],
        ['texts', null],
        ['data', null],
      ],
    ]);
    expect(terms[2]!.says).toContain('without asking A. Maker');
  });

  it('is never two things at once', () => {
    expect(problemsOf(() => publishKit({ ...none, licences: ['CC0-1.0', 'CERN-OHL-S-2.0'] }))).toMatchObject([
      { code: 'publish/two-licences', fix: 'Leave out CERN-OHL-S-2.0.' },
    ]);
  });
});

describe('a certificate in a kit', () => {
  const request = (json: string, build = measured): KitRequest => ({
    ...none,
    design: { ...design, instrument: build },
    certificate: given(json),
  });
  const good = JSON.stringify({ ...certificate, passes: true, rows: [row] });

  it('gives its figures as measured', () => {
    const kit = publishKit(request(good));
    expect(kit.tested).toContainEqual({ what: row.figure, value: '6.1°', by: 'measured' });
    expect(kit.files.map(({ path }) => path)).toContain('certificate/certificate.pdf');
    expect(textIn(request(good), 'index.html')).toContain('PASS: this build meets the need.');
  });

  it('is refused where it is of another build', () => {
    expect(problemsOf(() => publishKit({ ...none, certificate: given(good) }))).toMatchObject([
      { code: 'publish/other-build', got: `${instrument.name}, table abc12345` },
    ]);
    const other = good.replace(instrument.name, 'another vane');
    expect(problemsOf(() => publishKit(request(other)))).toMatchObject([{ code: 'publish/other-build' }]);
  });

  it.each(['', 'null', '[]', '{"name":3}', good.replace('"rows":[', '"rows":[1,'), good.slice(0, -2)])(
    'is refused where it is none: %j',
    (json) => {
      expect(problemsOf(() => publishKit(request(json)))).toMatchObject([
        { code: 'publish/bad-certificate' },
      ]);
    },
  );
});

it('refuses every file that is no photo, all at once', () => {
  const photos = ['disc.jpg', 'head.png', 'gap.webp'].map((file) => ({
    file,
    bytes: new Uint8Array([60, 115]),
  }));
  const found = problemsOf(() => publishKit({ ...none, photos }));
  expect(found.map(({ code, where }) => [code, where])).toEqual(
    photos.map(({ file }) => ['publish/not-a-photo', `--photos, ${file}`]),
  );
});
