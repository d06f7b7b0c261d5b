/** Tells work under way that the maker wants it stopped; the platform's AbortSignal is one. */
export interface StopSign {
  readonly aborted: boolean;
  /** Throws when the sign has been given. */
  throwIfAborted(): void;
}
