/** What a source is, as its first raw entry says. */
export interface StreamHead {
  /** Sequence number of that entry. [-] */
  readonly stream: number;
  readonly station: string;
  readonly source: 'serial' | 'stdin' | 'file' | 'mqtt';
  /** Path, port or topic, for the maker's eyes only. */
  readonly name: string;
  /** Lines may come out of order, as through a broker with several workers. */
  readonly isUnordered?: boolean;
}
