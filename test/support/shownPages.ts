import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { missingLines, pagesIn, shownCommands, type ShownCommand } from './docBlocks.ts';
import { COMMAND } from './runCli.ts';
import { ROOT } from './sourceFiles.ts';

/** The page that only lists the others. */
export const LIST = 'docs/how-to/README.md';

/** Every page that answers a question, and the tutorial. */
export const shownPages: readonly string[] = [
  ...pagesIn('docs/how-to').filter((page) => page !== LIST),
  'docs/tutorial.md',
];

/** Runs commands as a page prints them, but for where they write; one that several pages show is run once. */
function runner(folder: string) {
  const ran = new Map<string, { exit: number | null; output: string }>();
  return ({ command }: ShownCommand): { exit: number | null; output: string } => {
    const known = ran.get(command);
    if (known) return known;
    const script = command.replaceAll('npx vanewright', `node '${COMMAND}'`).replaceAll('out/', `${folder}/`);
    const { status, stdout, stderr } = spawnSync('bash', ['-c', script], { cwd: ROOT, encoding: 'utf8' });
    const result = { exit: status, output: `${stdout}${stderr}`.replaceAll(`${folder}/`, 'out/') };
    ran.set(command, result);
    return result;
  };
}

/** Tests that pages print what they show. */
export function testShownPages(pages: readonly string[]): void {
  const folder = mkdtempSync(join(tmpdir(), 'vanewright-docs-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const run = runner(folder);
  const asked = pages.map((page) => ({ page, commands: shownCommands(page) }));

  describe.each(asked)('$page', ({ page, commands }) => {
    it('answers with a command or a snippet', () => {
      expect(commands.length, `${page} shows no command`).toBeGreaterThan(0);
    });

    it.each(commands)('prints what it shows: $command', (shown) => {
      const { exit, output } = run(shown);
      expect({ exit, missing: missingLines(shown, output), output }).toMatchObject({
        exit: shown.exit,
        missing: [],
      });
    });
  });
}
