/** A standard stream that could not take what was said. */
export class NotPrinted extends Error {
  override readonly name = 'NotPrinted';
}

// Bytes that steer a terminal; a hostile name or path must not reach it. Line ends and tabs stay.
const STEERING = /[\u0000-\u0008\u000B-\u001F\u007F-\u009F]/g;

/**
 * Writes text to a stream and waits until it is taken.
 *
 * A reader that has gone away, as `head` does, is no fault.
 *
 * @throws NotPrinted when the stream is full or broken.
 */
export function print(stream: NodeJS.WriteStream, text: string): Promise<void> {
  return new Promise((taken, fail) => {
    const settle = (error?: Error | null): void => {
      const cause = error && 'code' in error ? String(error.code) : '';
      if (!error || cause === 'EPIPE') taken();
      else fail(new NotPrinted(`The answer could not be printed: ${cause || error.message}.`));
    };
    stream.once('error', settle);
    stream.write(text.replace(STEERING, '\uFFFD'), settle);
  });
}
