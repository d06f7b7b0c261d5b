import type { Detector } from '../detector.ts';
import type { Finding } from '../finding.ts';
import type { Seen } from '../readings/seen.ts';
import type { FaultSetting } from '../setting.ts';
import { AmbientLeak } from './ambientLeak.ts';
import { Condensation } from './condensation.ts';
import { DimLight } from './dimLight.ts';
import { DirtySector } from './dirtySector.ts';
import { extremes, type LightMoment } from './hourLight.ts';

const HOUR_MS = 3_600_000;
/** Moments of an hour that are kept: one a minute and some to spare. [-] */
const MOMENTS_MOST = 90;
/** Wind that turns the vane. [m/s] */
const WINDY_M_PER_S = 2;

/** Gathers the counts of an hour and hands them to whatever looks at light. */
export class LightWatch implements Detector {
  readonly #setting: FaultSetting;
  readonly #window: string;
  readonly #flooded: string;
  readonly #dim: DimLight;
  readonly #leak: AmbientLeak;
  readonly #dew: Condensation;
  readonly #dirt: DirtySector;
  #startMs = -Infinity;
  #moments: LightMoment[] = [];
  #samples = { all: 0, flooded: 0, windy: 0 };

  constructor(setting: FaultSetting) {
    this.#setting = setting;
    const { lights, code, place, windowLevel } = setting;
    this.#window = String(windowLevel);
    this.#flooded = this.#window.repeat(lights.length);
    const limits = lights.map(({ limit }) => limit);
    this.#dim = new DimLight(limits);
    this.#leak = new AmbientLeak(limits, place);
    this.#dew = new Condensation(lights.length);
    this.#dirt = new DirtySector(lights.length, code.positions);
  }

  add({ atMs, word, counts, position, speedMPerS }: Seen): void {
    const startMs = Math.floor(atMs / HOUR_MS) * HOUR_MS;
    if (startMs !== this.#startMs) {
      this.#ended();
      this.#startMs = startMs;
    }
    if (word === null) return;
    const { lights } = this.#setting;
    this.#samples.all++;
    if (word === this.#flooded) this.#samples.flooded++;
    if ((speedMPerS ?? 0) >= WINDY_M_PER_S) this.#samples.windy++;
    if (!counts || counts.length !== lights.length || this.#moments.length >= MOMENTS_MOST) return;
    this.#moments.push({
      position,
      lights: lights.map(({ lightOf }, channel) => lightOf(counts[channel]!)),
      isLit: [...word].map((level) => level === this.#window),
    });
  }

  #ended(): void {
    const [moments, { all, flooded, windy }] = [this.#moments, this.#samples];
    this.#moments = [];
    this.#samples = { all: 0, flooded: 0, windy: 0 };
    if (all === 0) return;
    const channels = this.#setting.lights.length;
    const hour = {
      startMs: this.#startMs,
      endMs: this.#startMs + HOUR_MS,
      lit: extremes(moments, channels, true),
      dark: extremes(moments, channels, false),
      moments,
      isFlooded: all >= 10 && flooded === all && windy >= 0.5 * all,
    };
    for (const part of [this.#dim, this.#leak, this.#dew, this.#dirt]) part.hour(hour);
  }

  findings(): readonly Finding[] {
    return [this.#dim, this.#leak, this.#dew, this.#dirt].flatMap((part) => part.findings());
  }
}
