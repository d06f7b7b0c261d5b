import {
  comparedReadings,
  levelUnder,
  readingUnder,
  withinTurn,
  type PageData,
  type PageReading,
} from './reading.ts';

// Runs in the page as text: the functions use each other, the words they are given, and nothing else.

/** As much of an event as the script hears. */
export interface PageEvent {
  readonly key: string;
  readonly clientX: number;
  readonly clientY: number;
  readonly pointerId: number;
  preventDefault(): void;
}

/** As much of an element as the script touches. */
export interface PageElement {
  textContent: string | null;
  value: string;
  checked: boolean;
  hidden: boolean;
  setAttribute(name: string, value: string): void;
  addEventListener(kind: string, hear: (event: PageEvent) => void): void;
  getBoundingClientRect(): {
    readonly left: number;
    readonly top: number;
    readonly width: number;
    readonly height: number;
  };
  setPointerCapture(pointer: number): void;
}

/** As much of a window as the script uses. */
export interface PageWindow {
  readonly document: {
    readonly documentElement: Pick<PageElement, 'setAttribute'>;
    getElementById(id: string): PageElement | null;
  };
  print(): void;
}

/** A number with at most two decimals. */
function shown(value: number): string {
  return String(Number(value.toFixed(2)));
}

/** What a reading says in words. */
export function readingText(reading: PageReading): string {
  if (reading.position === null || reading.headingDeg === null) {
    return 'word ' + reading.word + ', no position of its own';
  }
  const heading = shown(withinTurn(Number(reading.headingDeg.toFixed(2))));
  return 'position ' + reading.position + ', word ' + reading.word + ', heading ' + heading + '°';
}

/** What a code of the comparison reads, and how far that is off. */
export function comparedText(positions: number, read: number, right: number): string {
  const steps = Math.abs(read - right);
  const off = (Math.min(steps, positions - steps) * 360) / positions;
  const says = 'reads position ' + read + ' of ' + positions;
  return off === 0 ? says + ', which is right' : says + ': ' + shown(off) + '° off';
}

/** Shows the place at which the disc stands. */
function showPlace(window: PageWindow, data: PageData, angleDeg: number): void {
  const part = (id: string): PageElement => window.document.getElementById(id)!;
  const reading = readingUnder(data, angleDeg);
  const move = data.strip
    ? 'translate(' + -angleDeg * data.strip.mmPerDeg + ' 0)'
    : 'rotate(' + -angleDeg + ')';
  part('disc').setAttribute('transform', move);
  reading.levels.forEach((level, channel) => {
    const look = data.litLevel < 0 ? 'colour' : level === data.litLevel ? 'light' : 'dark';
    part('spot-' + channel).setAttribute('class', 'spot ' + look);
    if (data.litLevel < 0) part('spot-' + channel).setAttribute('fill', data.levelColours[level] ?? 'none');
    part('digit-' + channel).setAttribute('class', 'digit ' + look);
    part('digit-' + channel).textContent = String(level);
    part('sees-' + channel).textContent = level + ': ' + data.levelNames[level];
  });
  const heading = reading.headingDeg === null ? 'none' : shown(reading.headingDeg) + '°';
  part('word').textContent = reading.word;
  part('position').textContent = reading.position === null ? 'none of its own' : String(reading.position);
  part('heading').textContent = heading;
  part('turn').value = String(angleDeg);
  part('turn').setAttribute('aria-valuetext', readingText(reading));
}

/** Shows what the two codes read at that place. */
function showCompared(window: PageWindow, data: PageData, angleDeg: number): void {
  const part = (id: string): PageElement => window.document.getElementById(id)!;
  const place = (withinTurn(angleDeg) * data.comparedPositions) / 360;
  const aside = Number(part('aside').value) / 100;
  const read = comparedReadings(data.comparedPositions, place, aside);
  const says = {
    binary: comparedText(data.comparedPositions, read.binary, read.right),
    gray: comparedText(data.comparedPositions, read.gray, read.right),
  };
  const at = 'translate(' + -place * data.comparedCell + ' 0)';
  part('binary-rings').setAttribute('transform', at);
  part('gray-rings').setAttribute('transform', at);
  const ahead = 'translate(' + aside * data.comparedCell + ' 0)';
  part('binary-aside').setAttribute('transform', ahead);
  part('gray-aside').setAttribute('transform', ahead);
  part('binary-says').textContent = says.binary;
  part('gray-says').textContent = says.gray;
  part('compared-turn').value = String(withinTurn(angleDeg));
  part('compared-turn').setAttribute('aria-valuetext', 'binary ' + says.binary + '; Gray ' + says.gray);
  part('aside').setAttribute('aria-valuetext', shown(100 * aside) + ' % of a step; binary ' + says.binary);
}

/** How far a key turns the disc; `null` where it is none of these. [deg] */
export function keyTurnDeg(key: string, keyDeg: number, stepDeg: number): number | null {
  if (key === 'ArrowRight' || key === 'ArrowUp') return keyDeg;
  if (key === 'ArrowLeft' || key === 'ArrowDown') return -keyDeg;
  if (key === 'PageUp') return stepDeg;
  if (key === 'PageDown') return -stepDeg;
  return null;
}

/** Lets a hand pull the picture round its middle, or along where it is a strip. */
function followHand(stage: PageElement, data: PageData, turnBy: (deg: number) => void): void {
  let before: PageEvent | null = null;
  const angleOf = (event: PageEvent): number => {
    const box = stage.getBoundingClientRect();
    const x = event.clientX - box.left - box.width / 2;
    const y = event.clientY - box.top - box.height / 2;
    return (Math.atan2(x, -y) * 180) / Math.PI;
  };
  stage.addEventListener('pointerdown', (event) => {
    before = event;
    stage.setPointerCapture(event.pointerId);
  });
  stage.addEventListener('pointermove', (event) => {
    if (before === null) return;
    const box = stage.getBoundingClientRect();
    const pulled = data.strip
      ? ((event.clientX - before.clientX) * data.strip.shownMm) / box.width / data.strip.mmPerDeg
      : withinTurn(angleOf(event) - angleOf(before) + 180) - 180;
    before = event;
    turnBy(-pulled);
  });
  const letGo = (): void => {
    before = null;
  };
  stage.addEventListener('pointerup', letGo);
  stage.addEventListener('pointercancel', letGo);
}

/** Shows one of the three ways of telling it, or all of them on paper. */
function chooseTelling(window: PageWindow): void {
  const tellings = ['child', 'curious', 'engineer'];
  const part = (id: string): PageElement => window.document.getElementById(id)!;
  const show = (): void => {
    for (const telling of tellings) part(telling).hidden = !part('tell-' + telling).checked;
  };
  for (const telling of tellings) part('tell-' + telling).addEventListener('change', show);
  show();
  const print = (what: string): void => {
    window.document.documentElement.setAttribute('data-print', what);
    window.print();
  };
  part('print-poster').addEventListener('click', () => print('poster'));
  part('print-all').addEventListener('click', () => print('all'));
}

/** Makes the page alive: the disc turns under drag, keys and slider, and everything follows. */
export function explainDisc(window: PageWindow): void {
  const part = (id: string): PageElement => window.document.getElementById(id)!;
  const data = JSON.parse(part('data').textContent!) as PageData;
  let angleDeg = data.startDeg;
  const turnTo = (deg: number): void => {
    angleDeg = withinTurn(deg);
    showPlace(window, data, angleDeg);
    showCompared(window, data, angleDeg);
  };
  for (const id of ['turn', 'compared-turn']) {
    const positions = id === 'turn' ? data.positions : data.comparedPositions;
    part(id).addEventListener('input', () => turnTo(Number(part(id).value)));
    part(id).addEventListener('keydown', (event) => {
      const turn = keyTurnDeg(event.key, id === 'turn' ? data.keyDeg : 90 / positions, 360 / positions);
      if (turn === null) return;
      event.preventDefault();
      turnTo(angleDeg + turn);
    });
  }
  part('aside').addEventListener('input', () => showCompared(window, data, angleDeg));
  followHand(part('stage'), data, (deg) => turnTo(angleDeg + deg));
  chooseTelling(window);
  turnTo(angleDeg);
}

/**
 * The script of the page as text, made from the functions above as they are built.
 *
 * @returns Text of a script; the same for every disc.
 */
export function scriptSource(): string {
  const parts = [
    ...[withinTurn, levelUnder, readingUnder, comparedReadings],
    ...[
      shown,
      readingText,
      comparedText,
      showPlace,
      showCompared,
      keyTurnDeg,
      followHand,
      chooseTelling,
      explainDisc,
    ],
  ];
  const text = parts.map((part) => part.toString()).join('\n');
  return ['(function () {', '"use strict";', text, 'explainDisc(window);', '})();'].join('\n');
}
