/** Instant to the minute, as reports write it. [ms UTC] */
export function minute(atMs: number): string {
  return `${new Date(atMs).toISOString().slice(0, 16).replace('T', ' ')} UTC`;
}

/** A stretch of time in the unit that suits it. [ms] */
export function lasting(ms: number): string {
  const hours = ms / 3_600_000;
  if (hours < 1) return `${Math.round(hours * 60)} min`;
  return hours < 48 ? `${Number(hours.toFixed(1))} h` : `${Number((hours / 24).toFixed(1))} days`;
}

/** A share in percent. [-] */
export function percent(share: number): string {
  return `${Number((100 * share).toPrecision(2))} %`;
}
