import { describe, expect, it } from 'vitest';
import { exampleInstrument, plannedHead } from '../../../../../test/support/plannedHead.ts';
import { pageData } from '../pageData.ts';
import { comparedText, explainDisc, keyTurnDeg, type PageElement, type PageEvent } from './pageScript.ts';
import { comparedReadings } from './reading.ts';

type Told = PageElement & {
  readonly attributes: Record<string, string>;
  hear(kind: string, event?: object): void;
};

/** An element without a browser: it remembers what it is told. */
function fakeElement(): Told {
  const listeners: Record<string, ((event: PageEvent) => void)[]> = {};
  const attributes: Record<string, string> = {};
  return {
    ...{ textContent: null, value: '', checked: false, hidden: false, attributes },
    setAttribute: (name, value) => void (attributes[name] = value),
    addEventListener: (kind, hear) => void (listeners[kind] ??= []).push(hear),
    getBoundingClientRect: () => ({ left: 0, top: 0, width: 200, height: 200 }),
    setPointerCapture: () => {},
    hear: (kind, event = {}) =>
      listeners[kind]?.forEach((hear) => hear({ preventDefault() {}, ...event } as PageEvent)),
  };
}

function opened(example = 'jetty') {
  const instrument = exampleInstrument(example);
  const data = pageData({ instrument, head: plannedHead(instrument) });
  const parts = new Map<string, Told>();
  const root = fakeElement();
  const part = (id: string): Told => parts.get(id) ?? parts.set(id, fakeElement()).get(id)!;
  part('data').textContent = JSON.stringify(data);
  part('aside').value = '30';
  part('tell-child').checked = true;
  let prints = 0;
  explainDisc({ document: { documentElement: root, getElementById: part }, print: () => void (prints += 1) });
  return { part, root, data, prints: () => prints };
}

describe('the page in the hand', () => {
  it('turns by a quarter of a step with an arrow, and by a whole one with Page Up', () => {
    const { part } = opened();
    // 180° less a fifth of a step of 11.25°: the last of position 15; Gray of 15 is 01000, of 16 is 11000.
    expect([part('word').textContent, part('position').textContent]).toEqual(['01000', '15']);
    part('turn').hear('keydown', { key: 'ArrowRight' });
    expect([part('word').textContent, part('position').textContent]).toEqual(['11000', '16']);
    expect(part('sees-0').textContent).toBe('1: light');
    part('turn').hear('keydown', { key: 'PageDown' });
    expect(part('position').textContent).toBe('15');
    expect(part('turn').attributes['aria-valuetext']).toBe('position 15, word 01000, heading 185.63°');
  });

  it('goes on round the turn, and follows the slider', () => {
    const { part } = opened();
    part('turn').value = '1';
    part('turn').hear('input');
    expect(part('position').textContent).toBe('0');
    part('turn').hear('keydown', { key: 'PageDown' });
    expect(part('position').textContent).toBe('31');
  });

  it('follows a hand that pulls the disc a quarter turn clockwise, so that smaller disc angles come', () => {
    const { part } = opened();
    part('turn').value = '135';
    part('turn').hear('input');
    part('stage').hear('pointerdown', { clientX: 100, clientY: 10, pointerId: 1 });
    part('stage').hear('pointermove', { clientX: 190, clientY: 100, pointerId: 1 });
    expect(Number(part('turn').value)).toBeCloseTo(45, 9);
    part('stage').hear('pointerup');
    part('stage').hear('pointermove', { clientX: 100, clientY: 190, pointerId: 1 });
    expect(Number(part('turn').value)).toBeCloseTo(45, 9);
  });

  it('shows one telling at a time, and all of them on paper', () => {
    const { part, root, prints } = opened();
    const shown = () => ['child', 'curious', 'engineer'].filter((id) => !part(id).hidden);
    expect(shown()).toEqual(['child']);
    part('tell-child').checked = false;
    part('tell-engineer').checked = true;
    part('tell-engineer').hear('change');
    expect(shown()).toEqual(['engineer']);
    part('print-all').hear('click');
    expect([root.attributes['data-print'], prints()]).toEqual(['all', 1]);
  });

  it('names the colour that a sensor sees on a disc of colours', () => {
    const { part, data } = opened('tricolour');
    const level = Number(part('word').textContent![0]);
    expect(part('spot-0').attributes.fill).toBe(data.levelColours[level]);
  });

  it('tells of a sensor that is moved back into line', () => {
    const { part } = opened();
    expect(part('binary-says').textContent).toBe('reads position 31 of 32: 180° off');
    expect(part('gray-says').textContent).toBe('reads position 16 of 32: 11.25° off');
    part('aside').value = '0';
    part('aside').hear('input');
    expect(part('binary-says').textContent).toBe('reads position 15 of 32, which is right');
  });
});

describe('two codes with one sensor aside', () => {
  it('are right where the sensor stands in line', () => {
    for (let k = 0; k < 64; k++) {
      expect(comparedReadings(64, k + 0.5, 0)).toEqual({ right: k, binary: k, gray: k });
    }
  });

  it('are never off by more than a step in Gray, and by half a turn in natural binary', () => {
    const apart = (a: number, b: number) => Math.min(Math.abs(a - b), 32 - Math.abs(a - b));
    const places = Array.from({ length: 320 }, (_, i) => i / 10 + 0.05);
    const off = places.map((place) => comparedReadings(32, place, 0.3));
    expect(Math.max(...off.map(({ right, gray }) => apart(gray, right)))).toBe(1);
    expect(Math.max(...off.map(({ right, binary }) => apart(binary, right)))).toBe(16);
  });

  it('are told with the short way round', () => {
    expect(comparedText(16, 15, 0)).toBe('reads position 15 of 16: 22.5° off');
  });
});

it('leaves other keys to the browser', () => {
  expect(keyTurnDeg('Tab', 2, 8)).toBeNull();
});
