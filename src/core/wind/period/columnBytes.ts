import type { SampleColumns } from './sampleColumns.ts';

/** Bytes of numbers are kept at places that numbers may be read from. [byte] */
const WORD = 8;
/** Bytes of one sample: three numbers and what was read. [byte] */
const BYTES_OF_SAMPLE = 3 * WORD + 1;

const padded = (bytes: number): number => Math.ceil(bytes / WORD) * WORD;

/** Bytes of a frame with so many samples, its count before them. */
function frameBytes(samples: number): number {
  return WORD + padded(samples * BYTES_OF_SAMPLE);
}

/**
 * Columns as bytes for another process on the same machine: count, instants, headings, speeds, what was read.
 *
 * @param columns - [ms UTC], [deg], [m/s]
 */
export function columnBytes({ atMs, headingDeg, speedMPerS, read }: SampleColumns): Uint8Array {
  const samples = atMs.length;
  const frame = new Uint8Array(frameBytes(samples));
  new Float64Array(frame.buffer, 0, 1)[0] = samples;
  for (const [i, column] of [atMs, headingDeg, speedMPerS].entries())
    new Float64Array(frame.buffer, WORD * (1 + i * samples), samples).set(column);
  frame.set(read, WORD * (1 + 3 * samples));
  return frame;
}

/**
 * Columns of the bytes of another process, a frame at a time, however the bytes are cut.
 *
 * @param pieces - Bytes of whole frames, in order.
 * @returns [ms UTC], [deg], [m/s]
 */
export async function* columnsOfBytes(pieces: AsyncIterable<Uint8Array>): AsyncIterable<SampleColumns> {
  let waiting = new Uint8Array(0);
  for await (const piece of pieces) {
    const joined = new Uint8Array(waiting.length + piece.length);
    joined.set(waiting);
    joined.set(piece, waiting.length);
    let at = 0;
    while (joined.length - at >= WORD) {
      const samples = new Float64Array(joined.slice(at, at + WORD).buffer)[0]!;
      if (joined.length - at < frameBytes(samples)) break;
      yield framed(joined.slice(at, at + frameBytes(samples)), samples);
      at += frameBytes(samples);
    }
    waiting = joined.slice(at);
  }
}

function framed(frame: Uint8Array, samples: number): SampleColumns {
  const column = (i: number): Float64Array =>
    new Float64Array(frame.buffer, WORD * (1 + i * samples), samples);
  return {
    atMs: column(0),
    headingDeg: column(1),
    speedMPerS: column(2),
    read: frame.subarray(WORD * (1 + 3 * samples), WORD * (1 + 3 * samples) + samples),
  };
}
