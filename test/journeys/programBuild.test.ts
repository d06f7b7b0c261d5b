import { describe, expect, it } from 'vitest';
import { programFor } from '../../src/core/program/index.ts';
import { lineCharsAtMost } from '../../src/core/record/index.ts';
import { buildAvr, type AvrProgram } from '../support/avrBuild.ts';
import { AvrChip } from '../support/avrChip.ts';
import {
  cupsOn,
  freshLine,
  jettyHead,
  jettyInstrument,
  lineOf,
  setCounts,
  type VaneWishes,
} from '../support/avrVane.ts';

function build(wishes: VaneWishes = {}): Promise<AvrProgram> {
  const instrument = jettyInstrument(wishes);
  return buildAvr(programFor(instrument, jettyHead(instrument, wishes)).source);
}

describe('the program through the compiler', () => {
  it('takes at most 8 KB of flash and 600 bytes of memory with five channels and cups', async () => {
    const { flashBytes, ramBytes } = await build();
    expect(flashBytes).toBeLessThanOrEqual(8 * 1024);
    expect(ramBytes).toBeLessThanOrEqual(600);
  });

  it('holds no arithmetic of floating point, of 64 bits or of words and strings on a heap', async () => {
    const { symbols } = await build();
    const costly =
      /^(__(add|sub|mul|div|cmp|float|fix|neg)\w*[sd]f\w*|__\w*di3|__\w*divdi\w*|malloc|_Zn[wa]\w*)$/;
    expect([...symbols.keys()].filter((name) => costly.test(name))).toEqual([]);
    expect([...symbols.keys()]).toContain('__udivmodsi4'); // 32 bits: the name pattern is of this compiler
  });

  it.each<[string, VaneWishes]>([
    ['one channel, without cups', { positions: 2, cups: null }],
    ['six channels, sensors read twice', { positions: 64, sourceOhm: 18_200, lineIntervalMs: 4 }],
    ['pins of the maker', { positions: 8, channelPins: ['A5', 'A0', 'A2'], cups: cupsOn('D3', 500) }],
    ['a slow line at a common speed', { baud: 9600, lineIntervalMs: 1000 }],
    ['a vane that may turn as slowly as it likes', { turnRateDegPerS: 1e-3 }],
    ['a vane that may turn faster than any', { turnRateDegPerS: 1e9 }],
  ])('has no warning with %s', async (_, wishes) => {
    const { flashBytes } = await build(wishes);
    expect(flashBytes).toBeGreaterThan(2000);
  });

  it('is the same program whatever the instrument and its place are called', async () => {
    const plain = await build();
    for (const name of [
      '*/ system("rm"); /*',
      'jetty \\',
      'jetty ??/',
      'jetty\nint broken = ;\r\n#error no',
      'a\u2028b\u2029c\u0085d\u202ee\u0000f',
      '"; } #include "x',
      '',
      'x'.repeat(100_000),
      'Steg \u{1f30a} Ostrov \u010d\u0161\u017e \\',
    ]) {
      expect((await build({ name, place: name })).hex).toBe(plain.hex);
    }
  });

  it('reads channels from the pins the maker chose, and cups from the other interrupt', async () => {
    const { hex } = await build({
      positions: 8,
      channelPins: ['A5', 'A0', 'A2'],
      cups: cupsOn('D3', 500),
    });
    const chip = new AvrChip(hex);
    setCounts(chip, 5, 900);
    setCounts(chip, 0, 100);
    setCounts(chip, 2, 800);
    chip.runMs(4);
    chip.setDigital(3, false);
    chip.runMs(2);
    const line = freshLine(chip);
    expect(line.counts).toEqual([900, 100, 800]);
    expect(line.word).toBe('101');
    expect(line.cups).toEqual({ pulses: 1, edges: 1, gustPulses: null });
  });

  it('keeps memory for exactly the longest line', async () => {
    const program = await build();
    const chip = new AvrChip(program.hex);
    for (let input = 0; input < 5; input++) setCounts(chip, input, 1023); // word 11111: a heading of five digits
    chip.runMs(3);
    for (const name of ['timer0_millis', 'lineNumber', 'cupPulses', 'cupEdges', 'lastLineMs']) {
      chip.setMemory(program.symbols.get(name)! - 0x800000, 4_000_000_000);
    }
    const next = chip.lines.length;
    chip.runUntil(() => chip.lines.length > next + 1, 10);
    const text = chip.lines[next]!;
    expect(lineOf(text).cups).toEqual({ pulses: 4_000_000_000, edges: 4_000_000_000, gustPulses: null });
    // What this line lacks: eight more flags, two digits of half width, and mean, agreement and gust behind a dash.
    const missing = 8 + 2 + 4 + 3 + 4;
    expect(text.length + '\n'.length + missing).toBe(lineCharsAtMost(5, 1023));
  });

  it('finishes a line before it begins the next, even when that is overdue', async () => {
    const { hex, symbols } = await build({ baud: 57_600, lineIntervalMs: 25 });
    const chip = new AvrChip(hex);
    for (let input = 0; input < 5; input++) setCounts(chip, input, 900);
    chip.runUntil(() => chip.lines.at(-1)!.startsWith('vw1 '), 60); // most of the line still waits
    chip.setMemory(symbols.get('lastLineMs')! - 0x800000, 2 ** 32 - 1000);
    chip.runMs(60);
    const numbers = chip.lines.slice(0, -1).map((text) => lineOf(text).lineNumber);
    expect(numbers.length).toBeGreaterThan(3);
    expect(numbers).toEqual(numbers.map((_, i) => i));
  });
});
