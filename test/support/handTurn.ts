// An independent maker of recorded turns: it shares no code with src, so that what src finds can be held against it.

/** One channel of the invented build. */
export interface HandChannel {
  /** Pattern angles at which windows begin and end. [deg], windows may pass 360 */
  readonly windows: readonly (readonly [number, number])[];
  readonly radiusMm: number;
  readonly angleDeg: number;
  readonly litCounts: number;
  readonly darkCounts: number;
  /** Off its place along the track, clockwise positive. [mm] */
  readonly alongMm?: number;
  /** Stands at one value, whatever passes. [counts] */
  readonly stuckAt?: number;
}

/** A build and how it is recorded. */
export interface HandBuild {
  readonly channels: readonly HandChannel[];
  readonly slitMm: number;
  readonly boreMm: readonly [number, number];
  readonly noiseCounts: number;
  readonly sampleMs: number;
  /** Channel shown by each column. */
  readonly columns: readonly number[];
  /** Channels whose lit and dark counts are swapped, as by a sensor to the wrong side. */
  readonly inverted: readonly number[];
  /** Play in the coupling: the disc lags the vane by half of it, either way. [deg] */
  readonly backlashDeg?: number;
  /** Share of the swing that a share of light makes; the light itself by default. */
  readonly curve?: (light: number) => number;
}

/** Repeatable draws: a 32-bit mixing generator. */
export function draws(seed: number): () => number {
  let state = (seed * 2654435761 + 97) >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Normal draw by the polar method of Marsaglia. */
export function normal(random: () => number): number {
  for (;;) {
    const [u, v] = [2 * random() - 1, 2 * random() - 1];
    const s = u * u + v * v;
    if (s > 0 && s < 1) return u * Math.sqrt((-2 * Math.log(s)) / s);
  }
}

const RAD = Math.PI / 180;
/** Light of one channel with the reference line at a disc angle: how much of its slit lies in windows. */
export function handLight(build: HandBuild, channel: HandChannel, discDeg: number): number {
  const turn = (discDeg + channel.angleDeg) * RAD + (channel.alongMm ?? 0) / channel.radiusMm;
  const patternDeg = (off: number): number => {
    // Along the track is a quarter turn on from outwards.
    const x = channel.radiusMm * Math.cos(turn) - off * Math.sin(turn) - build.boreMm[0];
    const y = channel.radiusMm * Math.sin(turn) + off * Math.cos(turn) - build.boreMm[1];
    return Math.atan2(y, x) / RAD;
  };
  const first = patternDeg(-build.slitMm / 2);
  const span = (((patternDeg(build.slitMm / 2) - first) % 360) + 360) % 360;
  let open = 0;
  for (const [from, to] of channel.windows) {
    const begin = (((from - first) % 360) + 360) % 360;
    for (const at of [begin - 360, begin]) {
      open += Math.max(0, Math.min(span, at + to - from) - Math.max(0, at));
    }
  }
  return open / span;
}

/** How a hand turns a disc. */
export interface HandMotion {
  readonly turns: number;
  readonly degPerS: number;
  /** Share by which the speed goes up and down. [-] */
  readonly change: number;
  readonly startDeg: number;
  /** How often a turn the speed goes up and down; 1 by default, and never quite. [-] */
  readonly perTurn?: number;
  readonly phase: number;
  /** Moments at which the hand stops for a while: how far the disc is then from the start, and how long. [deg], [s] */
  readonly stops?: readonly { readonly afterDeg: number; readonly seconds: number }[];
}

/** Disc angle at even moments while the hand turns: growing, or falling for turns below 0. [deg] */
export function handAngles(motion: HandMotion, sampleMs: number): number[] {
  const { turns, degPerS, change, startDeg, phase, perTurn = 1, stops = [] } = motion;
  const way = Math.sign(turns);
  const rate = (2 * Math.PI * perTurn * degPerS) / 360;
  const plain = (s: number): number =>
    degPerS * s + ((change * degPerS) / rate) * (Math.cos(phase) - Math.cos(rate * s + phase));
  const angles: number[] = [];
  let clock = 0;
  let waited = 0;
  const left = [...stops];
  for (;;) {
    const gone = plain(clock);
    if (gone > Math.abs(turns) * 360) break;
    const stop = left[0];
    if (stop && gone >= stop.afterDeg && waited < stop.seconds) waited += sampleMs / 1000;
    else {
      if (stop && gone >= stop.afterDeg) {
        left.shift();
        waited = 0;
      }
      clock += sampleMs / 1000;
    }
    angles.push(startDeg + way * gone);
  }
  return angles;
}

/** Counts of every column at each angle of the vane, one row a sample. */
export function handRows(build: HandBuild, angles: readonly number[], random: () => number): number[][] {
  let lag = 0;
  return angles.map((angle, i) => {
    const way = Math.sign(angle - (angles[i - 1] ?? angle));
    if (way !== 0) lag = (-way * (build.backlashDeg ?? 0)) / 2;
    return build.columns.map((c) => {
      const channel = build.channels[c]!;
      if (channel.stuckAt !== undefined)
        return Math.round(channel.stuckAt + build.noiseCounts * normal(random));
      const open = handLight(build, channel, angle + lag);
      const light = build.curve ? build.curve(open) : open;
      const [dark, lit] = build.inverted.includes(c)
        ? [channel.litCounts, channel.darkCounts]
        : [channel.darkCounts, channel.litCounts];
      const counts = dark + light * (lit - dark) + build.noiseCounts * normal(random);
      return Math.min(1023, Math.max(0, Math.floor(counts + 0.5)));
    });
  });
}

/** Rows as a maker's own sketch would send them. */
export function handText(rows: readonly (readonly number[])[], sampleMs: number, part = ','): string {
  const names = ['ms', ...rows[0]!.map((_, c) => `a${c}`)].join(part);
  return [names, ...rows.map((row, i) => [Math.round(1000 + i * sampleMs), ...row].join(part))].join('\n');
}

/** Disc angle at which a lone edge of a channel stands at half light: found by halving. [deg] */
export function handEdgeDeg(build: HandBuild, channel: HandChannel, nearDeg: number): number {
  const at = (deg: number): number => handLight(build, channel, deg) - 0.5;
  let [low, high] = [nearDeg - 5, nearDeg + 5];
  const rising = at(high) > at(low);
  for (let step = 0; step < 40; step++) {
    const middle = (low + high) / 2;
    if (at(middle) > 0 === rising) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
