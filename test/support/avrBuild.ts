import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { promisify } from 'node:util';
import type { AvrChipName } from './avrChips.ts';

const run = promisify(execFile);

/** Where the Debian package arduino-core-avr puts the core. */
const HARDWARE = '/usr/share/arduino/hardware/arduino/avr';
const CORE = join(HARDWARE, 'cores/arduino');

// The flags of the core's own platform.txt. The core itself needs -fpermissive, and DECIMAL_DIG, which the
// Debian compiler (gcc 5.4) does not define for C++.
const targets = {
  atmega328p: { defines: ['-DARDUINO_AVR_UNO'], variant: 'standard' },
  // The USB part wants a name and numbers; these are the core's own, and nothing is ever plugged in.
  atmega32u4: {
    defines: [
      '-DARDUINO_AVR_LEONARDO',
      '-DUSB_VID=0x2341',
      '-DUSB_PID=0x8036',
      '-DUSB_MANUFACTURER="Unknown"',
      '-DUSB_PRODUCT="board"',
    ],
    variant: 'leonardo',
  },
};

/** Flags that depend on the chip. */
function targetFlags(chip: AvrChipName): string[] {
  const { defines, variant } = targets[chip];
  return [
    `-mmcu=${chip}`,
    '-DF_CPU=16000000L',
    '-DARDUINO=10819',
    '-DARDUINO_ARCH_AVR',
    ...defines,
    `-I${CORE}`,
    `-I${join(HARDWARE, 'variants', variant)}`,
  ];
}
const COMMON = ['-c', '-g', '-Os', '-ffunction-sections', '-fdata-sections', '-flto', '-fno-fat-lto-objects'];
const CPP = ['-std=gnu++11', '-fno-exceptions', '-fno-threadsafe-statics', '-DDECIMAL_DIG=__DECIMAL_DIG__'];

function flagsFor(source: string): string[] {
  if (source.endsWith('.S')) return ['-c', '-g', '-x', 'assembler-with-cpp', '-flto'];
  return source.endsWith('.c') ? [...COMMON, '-w', '-std=gnu11'] : [...COMMON, '-w', ...CPP, '-fpermissive'];
}

/** Compiles the core into `folder/core.a`. */
async function compileCore(
  folder: string,
  sources: readonly string[],
  target: readonly string[],
): Promise<void> {
  const objects: string[] = [];
  for (const source of sources) {
    const object = join(folder, `${basename(source)}.o`);
    await run('avr-gcc', [...flagsFor(source), ...target, source, '-o', object]);
    objects.push(object);
  }
  await run('avr-gcc-ar', ['rcs', join(folder, 'core.a'), ...objects]);
}

/** A missing tool fails the test, with its cure; a program that was never compiled proves nothing. */
function missingTool(error: unknown): never {
  if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
  throw new Error('The compiler for the chip is missing: install gcc-avr, avr-libc and arduino-core-avr.', {
    cause: error,
  });
}

const cores = new Map<AvrChipName, Promise<string>>();

/**
 * The compiled core, made once a machine: the folder's name is a hash of compiler, flags and sources, and the finished
 * folder is moved into place, so that tests running side by side never see half of it.
 */
function compiledCore(chip: AvrChipName): Promise<string> {
  const known = cores.get(chip) ?? buildCore(chip).catch(missingTool);
  cores.set(chip, known);
  return known;
}

async function buildCore(chip: AvrChipName): Promise<string> {
  const target = targetFlags(chip);
  const { stdout: compiler } = await run('avr-gcc', ['--version']);
  const names = (await readdir(CORE)).sort();
  const hash = createHash('sha256').update(JSON.stringify([compiler, target, COMMON, CPP]));
  for (const name of names) hash.update(name).update(await readFile(join(CORE, name)));
  const kept = join(tmpdir(), `avr-core-${hash.digest('hex').slice(0, 24)}`);
  const archive = join(kept, 'core.a');
  if (existsSync(archive)) return archive;
  const made = await mkdtemp(join(tmpdir(), 'avr-core-making-'));
  const sources = names.filter((name) => /\.(c|cpp|S)$/.test(name)).map((name) => join(CORE, name));
  await compileCore(made, sources, target);
  try {
    await rename(made, kept);
  } catch (error) {
    await rm(made, { recursive: true });
    if (!existsSync(archive)) throw error; // another test was first: then its core serves
  }
  return archive;
}

/** A program as the chip gets it, and how much of the chip it takes. */
export interface AvrProgram {
  /** Intel HEX of the program memory. */
  readonly hex: string;
  /** Program memory taken: code and the values that are copied to working memory. [byte] */
  readonly flashBytes: number;
  /** Working memory taken before the first call. [byte] */
  readonly ramBytes: number;
  /** Address of every function and variable; those in working memory begin at 0x800000. */
  readonly symbols: ReadonlyMap<string, number>;
}

/** Compiles a program with every warning an error, and links it with the real core. */
export async function buildAvr(source: string, chip: AvrChipName = 'atmega328p'): Promise<AvrProgram> {
  const archive = await compiledCore(chip);
  const folder = await mkdtemp(join(tmpdir(), 'avr-program-'));
  try {
    const at = (name: string): string => join(folder, name);
    await mkdir(at('program'));
    await writeFile(at('program/program.ino'), source);
    // prettier-ignore
    await run('avr-g++', [...COMMON, ...CPP, '-Wall', '-Wextra', '-Werror', ...targetFlags(chip),
      '-x', 'c++', '-include', 'Arduino.h', at('program/program.ino'), '-o', at('program.o')]);
    // prettier-ignore
    await run('avr-gcc', ['-w', '-Os', '-g', '-flto', '-fuse-linker-plugin', '-Wl,--gc-sections', `-mmcu=${chip}`,
      '-o', at('program.elf'), at('program.o'), archive, '-lm']);
    await run('avr-objcopy', ['-O', 'ihex', '-R', '.eeprom', at('program.elf'), at('program.hex')]);
    const { stdout: sizes } = await run('avr-size', [at('program.elf')]);
    const [text, data, bss] = sizes.split('\n')[1]!.trim().split(/\s+/).map(Number);
    const { stdout: names } = await run('avr-nm', [at('program.elf')]);
    return {
      hex: await readFile(at('program.hex'), 'utf8'),
      flashBytes: text! + data!,
      ramBytes: data! + bss!,
      symbols: new Map(
        names.split('\n').map((line) => [line.split(' ').at(-1)!, parseInt(line, 16)] as const),
      ),
    };
  } finally {
    await rm(folder, { recursive: true });
  }
}
