/** What a picture beside a cause shows. */
export type CausePicture = 'signals' | 'words' | 'widths';

/** One thing that is wrong or worth knowing about a build. */
export interface Cause {
  /** Stable name. */
  readonly kind:
    | 'other-code'
    | 'wiring-unknown'
    | 'tied'
    | 'dead'
    | 'stuck'
    | 'saturated'
    | 'swapped'
    | 'order-reversed'
    | 'inverted'
    | 'sense-reversed'
    | 'weak'
    | 'drift'
    | 'missing-word'
    | 'never-ending-word'
    | 'bore'
    | 'tilt'
    | 'play'
    | 'channel-off-place'
    | 'window-growth'
    | 'edge-scatter'
    | 'turned-too-fast';
  /** How it is dealt with: a fault to mend, one that the table already takes away, or something to know. */
  readonly standing: 'mend' | 'corrected' | 'know';
  /** What it costs where nothing is done, for ranking: degrees of error, 180 for a build that cannot be read. [deg] */
  readonly costDeg: number;
  /** One line. */
  readonly title: string;
  /** What in the recording says so, with numbers. */
  readonly evidence: string;
  /** The one thing to do. */
  readonly instruction: string;
  readonly picture: CausePicture;
  /** Channels it is about. */
  readonly channels: readonly number[];
}
