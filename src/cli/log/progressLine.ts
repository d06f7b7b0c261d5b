import type { SourceBytes } from '../../ports/index.ts';

/** The bar is drawn at most this often. [ms] */
const EVERY_MS = 200;
const WIDTH = 30;

/** Shows how far an import is, on a terminal and nowhere else. */
export function progressLine(
  stream: NodeJS.WriteStream,
  nowMs: () => number,
): {
  show(bytes: SourceBytes): void;
  end(): void;
} {
  let shownMs = -Infinity;
  let isShown = false;
  return {
    show({ done, begin }) {
      if (!stream.isTTY || !done || nowMs() - shownMs < EVERY_MS) return;
      shownMs = nowMs();
      isShown = true;
      const share = done.ofBytes === 0 ? 1 : done.bytes / done.ofBytes;
      const full = Math.round(WIDTH * share);

      const name = begin.name.replace(/[\x00-\x1f\x7f-\x9f]/g, '\ufffd').slice(-40);
      stream.write(
        `\r\u001b[K[${'#'.repeat(full)}${'.'.repeat(WIDTH - full)}] ${Math.floor(100 * share)} % ${name}`,
      );
    },
    end() {
      if (isShown) stream.write('\r\u001b[K');
    },
  };
}
