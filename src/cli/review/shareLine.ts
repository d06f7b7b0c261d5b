const WIDTH = 30;

/** Shows how much of a record was read, on a terminal and nowhere else. */
export function shareLine(stream: NodeJS.WriteStream): {
  show(what: string, share: number): void;
  end(): void;
} {
  let isShown = false;
  return {
    show(what, share) {
      if (!stream.isTTY) return;
      isShown = true;
      const within = Math.min(1, Math.max(0, share));
      const full = Math.round(WIDTH * within);
      stream.write(
        `\r\u001b[K[${'#'.repeat(full)}${'.'.repeat(WIDTH - full)}] ${Math.floor(100 * within)} % ${what}`,
      );
    },
    end() {
      if (isShown) stream.write('\r\u001b[K');
      isShown = false;
    },
  };
}
