import { useEffect, useState } from 'preact/hooks';

/** A value that pages watch. */
export interface Store<T> {
  get(): T;
  set(next: T): void;
  /** @returns Ends the watching. */
  watch(listener: () => void): () => void;
}

/** A store of one value. */
export function store<T>(initial: T): Store<T> {
  let value = initial;
  const listeners = new Set<() => void>();
  return {
    get: () => value,
    set(next) {
      if (Object.is(next, value)) return;
      value = next;
      for (const listener of [...listeners]) listener();
    },
    watch(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** The value of a store, or a part of it; the component is drawn again when that part is another. */
export function useStore<T, P = T>(
  from: Store<T>,
  part: (value: T) => P = (value) => value as unknown as P,
): P {
  const [seen, see] = useState(() => part(from.get()));
  useEffect(() => {
    const look = (): void => see(() => part(from.get()));
    look();
    return from.watch(look);
  }, [from]);
  return seen;
}
