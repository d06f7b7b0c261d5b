import type { Remote } from 'comlink';
import { describe, expect, it } from 'vitest';
import { backgroundOf } from './background.ts';
import type { Engine } from './engine.ts';

/** A promise that is settled from outside. */
function held<T>() {
  let settle: (value: T) => void = () => {};
  const promise = new Promise<T>((resolve) => (settle = resolve));
  return { promise, settle: (value: T) => settle(value) };
}

function setting() {
  const ended: number[] = [];
  let count = 0;
  const background = backgroundOf(() => {
    const mine = ++count;
    return { engine: {} as Remote<Engine>, end: () => void ended.push(mine) };
  });
  return { background, ended, started: () => count };
}

describe('work in the background', () => {
  it('runs the first and the newest of a slider, and lets go of those between', async () => {
    const { background, ended } = setting();
    const first = held<number>();
    const ran: number[] = [];
    const answers = [1, 2, 3].map((value) =>
      background.run(async () => {
        ran.push(value);
        return value === 1 ? first.promise : value;
      }, 'short'),
    );
    first.settle(1);
    expect(await Promise.all(answers)).toEqual([1, null, 3]);
    expect(ran).toEqual([1, 3]);
    expect(ended).toEqual([]);
  });

  it('stops long work for anything newer, and begins with a fresh worker', async () => {
    const { background, ended, started } = setting();
    const long = background.run(() => held<number>().promise, 'long');
    const short = background.run(async () => 2, 'short');
    expect(await Promise.all([long, short])).toEqual([null, 2]);
    expect(ended).toEqual([1]);
    expect(started()).toBe(2);
  });

  it('goes on after work that failed, and stops when it is told to', async () => {
    const { background, ended } = setting();
    await expect(background.run(() => Promise.reject(new Error('ours')), 'short')).rejects.toThrow('ours');
    expect(await background.run(async () => 5, 'long')).toBe(5);
    const last = background.run(() => held<number>().promise, 'short');
    background.stop();
    expect(await last).toBeNull();
    expect(ended).toEqual([1]);
  });
});
