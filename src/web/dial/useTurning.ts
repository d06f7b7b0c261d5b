import type { RefObject } from 'preact';
import { useEffect } from 'preact/hooks';
import type { Turn } from './turn.ts';

/** How far keys and the wheel turn the shaft. [deg] */
const KEY_DEG = 1;
const FINE_KEY_DEG = 0.1;
const PAGE_DEG = 15;
const WHEEL_DEG_PER_PIXEL = 0.1;

const DEG = 180 / Math.PI;

/** Where a pointer stands round the middle of an element, clockwise from up. [deg] */
function bearingOf(element: Element, { clientX, clientY }: PointerEvent): number {
  const { left, top, width, height } = element.getBoundingClientRect();
  return Math.atan2(clientX - left - width / 2, -(clientY - top - height / 2)) * DEG;
}

/**
 * Turns the shaft by drag, touch, wheel and keys on an element.
 *
 * A disc that goes clockwise on the screen brings smaller disc angles under the head.
 */
export function useTurning(ref: RefObject<Element | null>, turn: Turn): void {
  useEffect(() => {
    const element = ref.current as HTMLElement | null;
    if (!element) return;
    let last: number | null = null;
    const down = (event: PointerEvent): void => {
      last = bearingOf(element, event);
      element.setPointerCapture(event.pointerId);
      turn.spin(0);
    };
    const move = (event: PointerEvent): void => {
      if (last === null) return;
      const now = bearingOf(element, event);
      const clockwise = ((now - last + 540) % 360) - 180;
      last = now;
      turn.turnBy(-clockwise);
    };
    const up = (): void => {
      last = null;
    };
    const wheel = (event: WheelEvent): void => {
      // A page is zoomed with the control key; that stays the browser's.
      if (event.ctrlKey) return;
      event.preventDefault();
      turn.turnBy((event.deltaY || event.deltaX) * WHEEL_DEG_PER_PIXEL);
    };
    const press = (event: KeyboardEvent): void => {
      const by = keyTurn(event);
      if (by === null) return;
      event.preventDefault();
      turn.spin(0);
      if (by === 'home') turn.turnTo(0);
      else turn.turnBy(by);
    };
    element.addEventListener('pointerdown', down);
    element.addEventListener('pointermove', move);
    element.addEventListener('pointerup', up);
    element.addEventListener('pointercancel', up);
    element.addEventListener('wheel', wheel, { passive: false });
    element.addEventListener('keydown', press);
    return () => {
      element.removeEventListener('pointerdown', down);
      element.removeEventListener('pointermove', move);
      element.removeEventListener('pointerup', up);
      element.removeEventListener('pointercancel', up);
      element.removeEventListener('wheel', wheel);
      element.removeEventListener('keydown', press);
    };
  }, [turn]);
}

/** How far a key turns the shaft. [deg] */
function keyTurn({ key, shiftKey, altKey, ctrlKey, metaKey }: KeyboardEvent): number | 'home' | null {
  if (altKey || ctrlKey || metaKey) return null;
  const one = shiftKey ? FINE_KEY_DEG : KEY_DEG;
  if (key === 'ArrowRight' || key === 'ArrowUp') return one;
  if (key === 'ArrowLeft' || key === 'ArrowDown') return -one;
  if (key === 'PageUp') return PAGE_DEG;
  if (key === 'PageDown') return -PAGE_DEG;
  return key === 'Home' ? 'home' : null;
}
