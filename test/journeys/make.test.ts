import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { chmodSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { COMMAND, filesIn, ownFolder, vanewright } from '../support/runCli.ts';
import { ROOT, textOf } from '../support/sourceFiles.ts';

const JETTY = join(ROOT, 'examples/jetty/instrument.yaml');

describe('vanewright make', () => {
  let folder: ReturnType<typeof ownFolder>;
  beforeEach(() => {
    folder = ownFolder();
  });
  afterEach(() => {
    folder.end();
  });

  const edited = (from: string | RegExp, to: string): string => {
    const text = textOf('examples/jetty/instrument.yaml');
    const changed = text.replace(from, to);
    expect(changed).not.toBe(text);
    const path = join(folder.path, 'edited.yaml');
    writeFileSync(path, changed);
    return path;
  };

  it('writes every file of the jetty vane, and the same bytes each time', () => {
    const out = join(folder.path, 'out');
    const { exit, out: text } = vanewright('make', JETTY, '--out', out);
    expect(exit).toBe(0);
    expect(text).toContain('The proof says yes');
    const found = filesIn(out);
    expect(found).toEqual(
      expect.arrayContaining([
        'SHA256SUMS',
        'build-sheet.html',
        'bundle.zip',
        'code.csv',
        'code.json',
        'coupon/coupon.stl',
        'disc.3mf',
        'bundle.zip',
        'disc.dxf',
        'disc.pdf',
        'disc.stl',
        'disc.svg',
        'how-it-works.html',
        'masses.csv',
        'parts.csv',
        'prints/housing-base.stl',
        'prints/prints.3mf',
        'prints/sensor-holder.stl',
        'program/boathouse_jetty_vane/boathouse_jetty_vane.ino',
        'proof.json',
      ]),
    );
    expect(text).toContain(`Wrote ${found.length} files`);
    const sums = readFileSync(join(out, 'SHA256SUMS'), 'utf8');
    vanewright('make', JETTY, '--out', join(folder.path, 'again'));
    expect(readFileSync(join(folder.path, 'again/SHA256SUMS'), 'utf8')).toBe(sums);
    expect(sums).toContain(
      createHash('sha256')
        .update(readFileSync(join(out, 'disc.svg')))
        .digest('hex'),
    );
  });

  it('changes drawing, proof and program together when one number is edited', () => {
    const out = join(folder.path, 'out');
    const all = [
      'disc.svg',
      'disc.stl',
      'proof.json',
      'build-sheet.html',
      'program/boathouse_jetty_vane/boathouse_jetty_vane.ino',
    ];
    vanewright('make', JETTY, '--out', out, '--only', 'disc,program,proof,sheet');
    const before = all.map((path) => readFileSync(join(out, path), 'latin1'));
    vanewright(
      'make',
      edited(/positions: 32/, 'positions: 24'),
      '--out',
      out,
      '--only',
      'disc,program,proof,sheet',
    );
    const after = all.map((path) => readFileSync(join(out, path), 'latin1'));
    for (const [i, path] of all.entries()) expect(after[i], path).not.toBe(before[i]);
  });

  it('makes only the parts asked for', () => {
    const out = join(folder.path, 'out');
    expect(vanewright('make', JETTY, '--out', out, '--only', 'program').exit).toBe(0);
    expect(filesIn(out)).toEqual(['SHA256SUMS', 'program/boathouse_jetty_vane/boathouse_jetty_vane.ino']);
    const { out: text } = vanewright('make', JETTY, '--out', out, '--only', ' disc , parts');
    expect(text).toContain('Not made again, so they may show an older design: program/');
    expect(filesIn(out)).toContain('program/boathouse_jetty_vane/boathouse_jetty_vane.ino');
    const { exit, err } = vanewright('make', JETTY, '--out', out, '--only', 'coupons');
    expect([exit, err]).toEqual([2, expect.stringContaining('make/unknown-part')]);
  });

  it('writes nothing when the design cannot be made', () => {
    const out = join(folder.path, 'out');
    const { exit, err } = vanewright('make', edited(/diameterMm: 90/, 'diameterMm: 80000'), '--out', out);
    expect(exit).toBe(2);
    expect(err).toMatch(/edited\.yaml:\d+:\d+/);
    expect(readdirSync(folder.path)).toEqual(['edited.yaml']);
  });

  it('saves a drawing of the fault, and nothing else, when the disc cannot be made', () => {
    const out = join(folder.path, 'out');
    const { exit, err } = vanewright('make', edited(/positions: 32/, 'positions: 1024'), '--out', out);
    expect(exit).toBe(2);
    expect(err).toContain('out/disc-fault.svg shows the place');
    expect(filesIn(out)).toEqual(['disc-fault.svg']);
  });

  it('leaves no half file when the disk is full in mid-write', () => {
    // The shell's file size limit makes the system refuse the write in the middle, as a full disk does.
    const out = join(folder.path, 'out');
    const { status, stderr } = spawnSync(
      'bash',
      ['-c', 'ulimit -f 20; exec node "$0" make "$1" --out "$2"', COMMAND, JETTY, out],
      {
        encoding: 'utf8',
      },
    );
    expect([status, stderr]).toEqual([2, expect.stringContaining('files/disk-full')]);
    expect(readdirSync(folder.path)).toEqual([]);
  });

  it('keeps the earlier result whole when the disk is full', () => {
    const out = join(folder.path, 'out');
    vanewright('make', JETTY, '--out', out);
    const before = readFileSync(join(out, 'SHA256SUMS'), 'utf8');
    const words = [
      '-c',
      'ulimit -f 20; exec node "$0" make "$1" --out "$2"',
      COMMAND,
      edited(/positions: 32/, 'positions: 24'),
      out,
    ];
    expect(spawnSync('bash', words).status).toBe(2);
    expect(readFileSync(join(out, 'SHA256SUMS'), 'utf8')).toBe(before);
    expect(spawnSync('sha256sum', ['-c', 'SHA256SUMS'], { cwd: out }).status).toBe(0);
  });

  it('says which folder it may not write to', () => {
    const closed = join(folder.path, 'closed');
    mkdirSync(closed);
    chmodSync(closed, 0o500);
    const out = join(closed, 'out');
    // Root writes anywhere, so the command runs as nobody when the tests run as root.
    const command = ['node', COMMAND, 'make', JETTY, '--out', out];
    const isRoot = process.getuid?.() === 0;
    const unwritable = isRoot ? '/proc/vanewright' : out;
    if (isRoot) command[command.length - 1] = unwritable;
    const { status, stderr } = spawnSync(command[0]!, command.slice(1), { encoding: 'utf8' });
    expect([status, stderr]).toEqual([2, expect.stringContaining('files/not-writable')]);
    expect(stderr).toContain(unwritable);
    chmodSync(closed, 0o700);
  });

  it('stops cleanly on Ctrl-C, whenever it comes', async () => {
    for (const waitMs of [50, 150, 250]) {
      const out = join(folder.path, `stopped-${waitMs}`);
      const child = spawn('node', [COMMAND, 'make', JETTY, '--out', out, '--builds', '20000']);
      const ended = new Promise<number | null>((settle) => child.on('close', (code) => settle(code)));
      setTimeout(() => child.kill('SIGINT'), waitMs);
      await ended;
      const left = readdirSync(folder.path).filter((name) => name.includes(`stopped-${waitMs}`));
      if (left.length === 0) continue;
      expect(left).toEqual([`stopped-${waitMs}`]);
      expect(spawnSync('sha256sum', ['-c', 'SHA256SUMS'], { cwd: out }).status).toBe(0);
    }
  });
});
