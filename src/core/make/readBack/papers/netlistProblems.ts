import type { Problem } from '../../../error/index.ts';
import { disagreement } from '../disagreement.ts';

/**
 * What is wrong with a netlist: ends of parts that are not listed, wires with one end, pins on two wires, and channels
 * whose sensor reaches no pin of the board.
 *
 * @param text - As `make` writes it: parts, then nets with their ends.
 * @param channels - Channels of the head. [-], whole
 * @check src/core/make/readBack/readBundle.test.ts
 */
export function netlistProblems(path: string, text: string, channels: number): Problem[] {
  const wrong = (where: string, got: string, allowed: string): Problem =>
    disagreement(`${path}, ${where}`, 'A netlist was read back and cannot be wired.', got, allowed);
  const [partText = '', netText = ''] = text.split(/^nets$/m);
  const rowsOf = (part: string): string[][] =>
    part
      .split('\n')
      .map((line) => line.trim().split(/\s+/))
      .filter((row) => row.length > 1);
  const parts = new Set(rowsOf(partText).map(([name]) => name!));
  const nets = rowsOf(netText);
  const seen = new Map<string, string>();
  const problems = nets.flatMap(([net, ...ends]): Problem[] => {
    const lone = ends.length < 2 ? [wrong(net!, `1 end, ${ends.join()}`, '2 ends or more')] : [];
    const others = ends.flatMap((end): Problem[] => {
      const part = end.slice(0, end.lastIndexOf('.'));
      if (!parts.has(part)) return [wrong(net!, `an end at ${end}`, 'an end at a listed part')];
      const before = seen.get(end);
      seen.set(end, net!);
      return before ? [wrong(end, `on ${before} and on ${net}`, 'one wire')] : [];
    });
    return [...lone, ...others];
  });
  const missing = Array.from({ length: channels }, (_, channel) => `S${channel}`).filter(
    (sensor) => ![...seen.keys()].some((end) => end.startsWith(`${sensor}.`)),
  );
  return [...problems, ...missing.map((sensor) => wrong(sensor, 'no wire', 'a wire to its channel'))];
}
