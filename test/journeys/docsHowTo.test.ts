import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { missingLines, pagesIn, shownCommands, type ShownCommand } from '../support/docBlocks.ts';
import { COMMAND } from '../support/runCli.ts';
import { ROOT, textOf } from '../support/sourceFiles.ts';

const folder = mkdtempSync(join(tmpdir(), 'vanewright-docs-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Commands that several pages show are run once. */
const ran = new Map<string, { exit: number | null; output: string }>();

function run({ command }: ShownCommand): { exit: number | null; output: string } {
  const known = ran.get(command);
  if (known) return known;
  // As printed, but for where it writes.
  const script = command.replaceAll('npx vanewright', `node '${COMMAND}'`).replaceAll('out/', `${folder}/`);
  const { status, stdout, stderr } = spawnSync('bash', ['-c', script], { cwd: ROOT, encoding: 'utf8' });
  const result = { exit: status, output: `${stdout}${stderr}`.replaceAll(`${folder}/`, 'out/') };
  ran.set(command, result);
  return result;
}

const LIST = 'docs/how-to/README.md';
const pages = pagesIn('docs/how-to')
  .filter((page) => page !== LIST)
  .map((page) => ({ page, commands: shownCommands(page) }));

describe('the list of questions', () => {
  it('names every page by its question', () => {
    const links = pages.map(({ page }) => `[${textOf(page).split('\n')[0]!.slice(2)}](${basename(page)})`);
    expect(links.filter((link) => !textOf(LIST).includes(link))).toEqual([]);
  });
});

const TUTORIAL = { page: 'docs/tutorial.md', commands: shownCommands('docs/tutorial.md') };

describe.each([...pages, TUTORIAL])('$page', ({ page, commands }) => {
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
