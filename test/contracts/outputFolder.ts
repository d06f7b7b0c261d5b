import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { OutputFolder } from '../../src/ports/index.ts';

/** What a contract needs to know of the world behind an adapter. */
export interface OutputWorld {
  readonly output: OutputFolder;
  /** Path of a folder that does not exist yet. */
  readonly folder: string;
  /** Path below the folder to text, or `null` where there is nothing. */
  read(path: string): Promise<string | null>;
  /** Puts a maker's own file into the folder. */
  put(path: string, text: string): Promise<void>;
  /** Every file below the folder's parent, so that leftovers show. */
  all(): Promise<string[]>;
  end(): Promise<void>;
}

const never = new AbortController().signal;

/** The output folder's promises; every adapter's own test runs them. */
export function outputFolderContract(name: string, open: () => Promise<OutputWorld>): void {
  describe(`${name} keeps the output folder's promises`, () => {
    let world: OutputWorld;
    const write = (files: Record<string, string>, as: 'result' | 'part' | 'addition' = 'result') =>
      world.output.write(
        world.folder,
        Object.entries(files).map(([path, content]) => ({ path, content })),
        never,
        as,
      );
    beforeEach(async () => {
      world = await open();
    });
    afterEach(async () => {
      await world.end();
    });

    it('writes every file, folders included, and the list of checksums last', async () => {
      const { paths } = await write({ 'disc.svg': '<svg/>', 'program/vane.ino': 'x' });
      expect(paths).toEqual(['disc.svg', 'program/vane.ino', 'SHA256SUMS']);
      expect(await world.read('program/vane.ino')).toBe('x');
      expect(await world.read('SHA256SUMS')).toContain('  disc.svg\n');
    });

    it('replaces an earlier result and takes away what is no longer made', async () => {
      await write({ 'disc.svg': 'old', 'disc.stl': 'old' });
      const { removed } = await write({ 'disc.svg': 'new' });
      expect(removed).toEqual(['disc.stl']);
      expect(await world.read('disc.svg')).toBe('new');
      expect(await world.read('disc.stl')).toBeNull();
    });

    it("leaves a maker's own files and a file they have changed", async () => {
      await write({ 'disc.svg': 'ours', 'disc.stl': 'ours' });
      await world.put('notes.txt', 'mine');
      await world.put('disc.stl', 'ours, but mended by hand');
      const { kept } = await write({ 'disc.svg': 'new' });
      expect(kept).toEqual(['disc.stl']);
      expect(await world.read('notes.txt')).toBe('mine');
      expect(await world.read('disc.stl')).toBe('ours, but mended by hand');
    });

    it('puts a file that a maker has changed aside before it writes the new one', async () => {
      await write({ 'vane.ino': 'ours' });
      await world.put('vane.ino', 'mended by hand');
      const { setAside } = await write({ 'vane.ino': 'new' });
      expect(setAside).toEqual(['vane.ino.yours']);
      expect(await world.read('vane.ino.yours')).toBe('mended by hand');
      expect(await world.read('vane.ino')).toBe('new');
      await world.put('vane.ino', 'mended again');
      expect((await write({ 'vane.ino': 'newest' })).setAside).toEqual(['vane.ino.yours-2']);
    });

    it("never takes a maker's own file of the same name for its own", async () => {
      await world.put('parts.csv', 'mine');
      const { setAside } = await write({ 'parts.csv': 'ours' });
      expect(setAside).toEqual(['parts.csv.yours']);
      expect(await world.read('parts.csv.yours')).toBe('mine');
    });

    it('refuses a list of checksums that someone else wrote, and touches nothing', async () => {
      await world.put('precious.txt', 'mine');
      await world.put('SHA256SUMS', `${'0'.repeat(64)}  precious.txt\n`);
      await expect(write({ 'disc.svg': 'x' })).rejects.toThrow('files/foreign-checksums');
      expect(await world.read('precious.txt')).toBe('mine');
      expect(await world.read('disc.svg')).toBeNull();
    });

    it('leaves the rest of a result when a part is written, and says so', async () => {
      await write({ 'disc.svg': 'old', 'vane.ino': 'old' });
      const { left, removed } = await write({ 'disc.svg': 'new' }, 'part');
      expect([left, removed]).toEqual([['vane.ino'], []]);
      expect(await world.read('vane.ino')).toBe('old');
      expect(await world.read('SHA256SUMS')).toContain('  vane.ino\n');
    });

    it('leaves no empty folder of an earlier run', async () => {
      await write({ 'program/old/old.ino': 'x' });
      await write({ 'program/new/new.ino': 'x' });
      expect((await world.all()).filter((path) => path.includes('old'))).toEqual([]);
    });

    it('adds files without a list of checksums', async () => {
      await write({ 'disc.svg': 'ours' });
      expect((await write({ 'instrument.yaml': 'x' }, 'addition')).paths).toEqual(['instrument.yaml']);
      expect(await world.read('disc.svg')).toBe('ours');
    });

    it('leaves nothing behind when stopped', async () => {
      const stopper = new AbortController();
      stopper.abort();
      const files = [{ path: 'disc.svg', content: 'x' }];
      await expect(world.output.write(world.folder, files, stopper.signal, 'result')).rejects.toThrow();
      expect(await world.all()).toEqual([]);
    });

    it('changes nothing when a folder stands where a file should go', async () => {
      await world.put('b.svg/inside.txt', 'mine');
      await expect(write({ 'a.svg': 'x', 'b.svg': 'y' })).rejects.toThrow('files/not-writable');
      expect(await world.read('a.svg')).toBeNull();
    });
  });
}
