import type { CodeTable } from '../../codes/index.ts';

/**
 * At which positions the next one, either way, differs in one channel alone.
 *
 * @returns For each channel, for each position.
 */
export function besideEdges({ words, channels, positions }: CodeTable): boolean[][] {
  const isEdge = (a: string, b: string, channel: number): boolean =>
    [...a].every((level, c) => (level !== b[c]) === (c === channel));
  return channels.map((_, channel) =>
    words.map((word, position) => {
      const [last, next] = [words.at(position - 1)!, words[(position + 1) % positions]!];
      return isEdge(word, last, channel) || isEdge(word, next, channel);
    }),
  );
}

/** Channel that alone changes between each position and the next; `null` where several do. [-] */
export function edgeChannels({ words, positions }: CodeTable): (number | null)[] {
  return words.map((word, position) => {
    const next = words[(position + 1) % positions]!;
    const changing = [...word].flatMap((level, channel) => (level === next[channel] ? [] : [channel]));
    return changing.length === 1 ? changing[0]! : null;
  });
}
