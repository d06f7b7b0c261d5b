import { describe, expect, it } from 'vitest';
import { begun, changed, redone, STEPS_MOST, undone } from './history.ts';

describe('the history of a file', () => {
  it('goes back and forth through every change', () => {
    const three = ['b', 'c'].reduce((history, text) => changed(history, text), begun('a'));
    expect(undone(undone(three)).text).toBe('a');
    expect(redone(undone(three))).toEqual(three);
    expect(undone(undone(undone(three))).text).toBe('a');
    expect(redone(three)).toBe(three);
  });

  it('takes letters of one edit back together, and forgets what was undone after a new change', () => {
    const typed = changed(changed(changed(begun('1'), '12'), '123', true), '1234', true);
    expect(undone(typed).text).toBe('1');
    const other = changed(undone(typed), '9');
    expect(redone(other)).toBe(other);
    expect(changed(other, '9')).toBe(other);
  });

  it('keeps a bounded past', () => {
    let history = begun('');
    for (let i = 1; i <= STEPS_MOST + 50; i++) history = changed(history, String(i));
    expect(history.past.length).toBe(STEPS_MOST);
    expect(history.past[0]).toBe('50');
  });
});
