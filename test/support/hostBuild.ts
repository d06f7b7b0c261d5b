import { execFile, spawn } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';

const run = promisify(execFile);

// Reads rows of "milliseconds count count ..." and answers each with the line of that moment.
const harness = (writer: string): string => `
#include "vane_unit.h"
#include <cstdio>

int main() {
  takeProgramSettings();
  unsigned long ms, pulses, edges;
  bool first = true;
  while (std::scanf("%lu %lu %lu", &ms, &pulses, &edges) == 3) {
    for (uint8_t channel = 0; channel < CHANNELS; channel++) {
      unsigned count;
      if (std::scanf("%u", &count) != 1) return 1;
      counts[channel] = count;
    }
    if (first) {
      judgeFirstCounts();
      beginJudging();
    } else {
      judgeCounts();
    }
    first = false;
    judgeWord(ms);
    ${writer};
    std::fwrite(line, 1, lineLength, stdout);
  }
  return 0;
}
`;

/** One read: when, totals of the cups, and the counts of every channel. [ms], [-], [counts] */
export interface Feed {
  readonly ms: number;
  readonly pulses: number;
  readonly edges: number;
  readonly counts: readonly number[];
}

/** Compiles the C++ unit on this computer with every warning an error, and feeds it. @returns its lines. */
export async function hostLines(unit: string, writer: string, feed: readonly Feed[]): Promise<string[]> {
  const folder = await mkdtemp(join(tmpdir(), 'vane-host-'));
  try {
    await writeFile(join(folder, 'vane_unit.h'), unit);
    await writeFile(join(folder, 'main.cpp'), harness(writer));
    const flags = ['-std=c++11', '-O1', '-Wall', '-Wextra', '-Werror', '-fsanitize=undefined,address'];
    await run('g++', [...flags, join(folder, 'main.cpp'), '-o', join(folder, 'vane')]);
    const rows = feed.map(({ ms, pulses, edges, counts }) => [ms, pulses, edges, ...counts].join(' '));
    return await answered(join(folder, 'vane'), rows.join('\n'));
  } finally {
    await rm(folder, { recursive: true });
  }
}

function answered(program: string, input: string): Promise<string[]> {
  return new Promise((resolve, reject) => {
    const child = spawn(program);
    let text = '';
    let complaints = '';
    child.stdout.on('data', (part: Buffer) => (text += part.toString()));
    child.stderr.on('data', (part: Buffer) => (complaints += part.toString()));
    child.on('error', reject);
    child.on('close', (code) => {
      if (code === 0 && complaints === '') resolve(text.split('\n').slice(0, -1));
      else reject(new Error(`The host build ended with ${code}: ${complaints.slice(0, 2000)}`));
    });
    child.stdin.end(input);
  });
}
