import { ROOT, textOf } from './sourceFiles.ts';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';

/** A command of a page with the lines that the page says it prints. */
export interface ShownCommand {
  /** As printed, without the prompt. */
  readonly command: string;
  /** How it must end: 0 unless the page says `# ends with 1`. */
  readonly exit: number;
  /** Lines of its output, in order; `null` stands for lines left out. */
  readonly lines: readonly (string | null)[];
}

/** A fenced block of a page. */
interface Block {
  readonly language: string;
  readonly text: string;
}

/** Every page below a folder of the docs. */
export function pagesIn(folder: string): string[] {
  return (readdirSync(join(ROOT, folder), { recursive: true }) as string[])
    .filter((path) => path.endsWith('.md'))
    .map((path) => `${folder}/${path}`)
    .sort();
}

/** The fenced blocks of a page. */
export function blocksOf(page: string): Block[] {
  return [...textOf(page).matchAll(/^```(\S*)\n([\s\S]*?)^```$/gm)].map(([, language, text]) => ({
    language: language!,
    text: text!,
  }));
}

/** The commands that a page shows in `console` blocks, each with what it prints. */
export function shownCommands(page: string): ShownCommand[] {
  const commands: { command: string; exit: number; lines: (string | null)[] }[] = [];
  for (const { language, text } of blocksOf(page)) {
    if (language !== 'console') continue;
    for (const line of text.replace(/\\\n\s*/g, '').split('\n')) {
      if (line.startsWith('$ ')) commands.push(shown(line.slice(2)));
      else if (commands.length > 0 && line.trim() !== '')
        commands.at(-1)!.lines.push(line === '…' ? null : line.trimEnd());
    }
  }
  return commands;
}

function shown(line: string): { command: string; exit: number; lines: (string | null)[] } {
  const [command, exit = '0'] = line.split(/\s+# ends with (\d+)$/);
  return { command: command!.trim(), exit: Number(exit), lines: [] };
}

/**
 * What a command's output lacks of what a page shows; empty when the page is right.
 *
 * @param output - What was really printed.
 */
export function missingLines({ lines }: ShownCommand, output: string): string[] {
  const printed = output.split('\n').map((line) => line.trimEnd());
  let at = 0;
  return lines.flatMap((line) => {
    if (line === null) return [];
    const found = printed.indexOf(line, at);
    if (found < 0) return [line];
    at = found + 1;
    return [];
  });
}
