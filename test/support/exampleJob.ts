import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { filesIn, ownFolder } from './runCli.ts';
import { ROOT, textOf } from './sourceFiles.ts';

/** Names of all examples. */
export const examples: readonly string[] = readdirSync(join(ROOT, 'examples')).sort();

/** Largest file of recorded or logged data that an example may bring. [byte] */
const DATA_MOST = 300_000;

/** Tests that examples go through the whole job. */
export function testExamples(names: readonly string[]): void {
  describe.each(names)('the example %s', (name) => {
    let folder: ReturnType<typeof ownFolder>;
    let done: ReturnType<typeof spawnSync>;
    const made = (path: string): string => join(folder.path, name, path);
    beforeAll(() => {
      folder = ownFolder();
      const words = ['scripts/exampleJobs.mjs', folder.path, name];
      done = spawnSync('node', words, { cwd: ROOT, encoding: 'utf8', timeout: 240_000 });
    }, 250_000);
    afterAll(() => folder.end());

    it('says in its file and on its page that it is invented', () => {
      expect(textOf(`examples/${name}/instrument.yaml`)).toMatch(/invented/i);
      expect(textOf(`examples/${name}/README.md`)).toMatch(/\*\*Everything here is invented\*\*/);
    });

    it('brings small files, each told of on its page', () => {
      for (const file of readdirSync(join(ROOT, 'examples', name))) {
        expect(statSync(join(ROOT, 'examples', name, file)).size, file).toBeLessThan(DATA_MOST);
        if (file !== 'README.md') expect(textOf(`examples/${name}/README.md`)).toContain(file);
      }
    });

    it('goes from new to a published kit in one script', () => {
      expect([done.status, done.stderr]).toEqual([0, '']);
      const ran = String(done.stdout);
      for (const verb of ['new', 'weigh', 'prove', 'make', 'log', 'review', 'publish']) {
        expect(ran).toMatch(new RegExp(`^ok +vanewright ${verb} `, 'm'));
      }
    });

    it('proves yes and is made, every file of it', () => {
      expect(filesIn(made('made'))).toEqual(
        expect.arrayContaining(['SHA256SUMS', 'build-sheet.html', 'code.csv', 'disc.svg', 'proof.json']),
      );
      expect(JSON.parse(readFileSync(made('made/proof.json'), 'utf8'))).toMatchObject({ verdict: 'yes' });
    });

    it('is read by its own table after a turn by hand, unless it is of three colours', () => {
      const isFitted = name !== 'tricolour';
      expect(existsSync(made('fitted'))).toBe(isFitted);
      expect(/^asBuilt:/m.test(readFileSync(made('instrument.yaml'), 'utf8'))).toBe(isFitted);
    });

    it('ends with a kit that others can build it by', () => {
      const kit = filesIn(made('kit'));
      expect(kit).toEqual(expect.arrayContaining(['index.html', 'how-it-works.html', 'kit.zip']));
      expect(kit.includes('certificate/certificate.pdf')).toBe(name !== 'tricolour');
    });

    it('has a report', () => {
      expect(filesIn(made('review'))).toContain('review.html');
    });
  });
}
