import { InvalidArgumentError } from 'commander';
import type { RememberedMoment } from '../../app/api.ts';

const WORD = /^(\d+):(\d+):(\d+)=(\S+?)(?:~(\d+(?:\.\d+)?))?$/;
/** How surely a moment is known when nothing is said. [min] */
const USUAL_MIN = 10;

/** `4:0:0=2026-03-01T10:00Z~30`: source 4, run 0, counter 0 ms was at that instant, within 30 minutes. */
export function momentWord(text: string): RememberedMoment {
  const parts = WORD.exec(text);
  const atMs = parts ? Date.parse(parts[4]!) : Number.NaN;
  if (!parts || Number.isNaN(atMs)) {
    throw new InvalidArgumentError(
      'Allowed: SOURCE:RUN:COUNTER_MS=INSTANT~MINUTES, such as 1:0:0=2026-03-01T10:00Z~30.',
    );
  }
  const [, stream, segment, counterMs, , minutes = USUAL_MIN] = parts;
  return {
    stream: Number(stream),
    segment: Number(segment),
    counterMs: Number(counterMs),
    atMs,
    withinMs: Number(minutes) * 60_000,
  };
}
