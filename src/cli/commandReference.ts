import type { Command } from 'commander';
import { program } from './program.ts';
import { wire } from './wire.ts';

/** A command's own words, as `--help` prints them. */
function helpOf(command: Command): string {
  return command
    .configureHelp({ helpWidth: 100 })
    .helpInformation()
    .replace(/[ \t]+$/gm, '')
    .trimEnd();
}

/** A command and those below it, each under a heading. */
function sections(command: Command, before: string, depth: string): string[] {
  const name = `${before} ${command.name()}`.trim();
  const below = command.commands.filter((child) => child.name() !== 'help');
  return [
    `${depth} ${name}\n\n\`\`\`text\n${helpOf(command)}\n\`\`\``,
    ...below.flatMap((child) => sections(child, name, '##')),
  ];
}

/** Page of every command and option, from the program that reads them. */
export function commandReference(): string {
  const root = program(wire(new AbortController()), false, () => undefined);
  const [first, ...rest] = sections(root, '', '##');
  return [
    '# The commands',
    '',
    'Made from the program itself by `npm run generate`. Every command ends with 0 when all is good, 1 when the design or the data',
    'falls short and says how, 2 when the input cannot be used, 74 when its answer could not be printed, 130 when it was stopped.',
    '',
    [first, ...rest].join('\n\n'),
    '',
  ].join('\n');
}
