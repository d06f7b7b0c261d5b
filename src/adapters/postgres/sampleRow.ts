import type { Sample } from '../../core/record/index.ts';

/** A row of the table of samples as the driver gives it: whole numbers of 8 bytes come as text. */
export interface SampleRow {
  readonly at_ms: string;
  readonly within_ms: number;
  readonly heading_deg: number | null;
  readonly half_width_deg: number | null;
  readonly mean_heading_deg: number | null;
  readonly agreement: number | null;
  readonly speed_m_per_s: number | null;
  readonly gust_m_per_s: number | null;
  readonly flags: number;
  readonly word: string | null;
  readonly counts: string | null;
  readonly pulses: string | null;
  readonly edges: string | null;
  readonly stream: string;
  readonly line: string;
}

const whole = (text: string | null): number | null => (text === null ? null : Number(text));

/** A sample of a row. */
export function sampleOf(station: string, row: SampleRow): Sample {
  return {
    station,
    atMs: Number(row.at_ms),
    withinMs: row.within_ms,
    headingDeg: row.heading_deg,
    halfWidthDeg: row.half_width_deg,
    meanHeadingDeg: row.mean_heading_deg,
    agreement: row.agreement,
    speedMPerS: row.speed_m_per_s,
    gustMPerS: row.gust_m_per_s,
    flags: row.flags,
    word: row.word,
    counts: row.counts === null ? null : row.counts.split(' ').map(Number),
    pulses: whole(row.pulses),
    edges: whole(row.edges),
    stream: Number(row.stream),
    line: Number(row.line),
  };
}
