import { useMemo, useRef, useState } from 'preact/hooks';
import { shownNumber } from '../../parts/numbers.ts';
import type { OutlinePoint } from '../../record/recordData.ts';
import { words } from '../../words/en.ts';
import { dayNumber, dayOf, placeOf, type DaySpan } from './days.ts';

const DAY_MS = 86_400_000;
const SIDE = 14;
const STEP = 17;
/** Room above for the months. */
const TOP = 14;

interface CalendarProps {
  readonly days: readonly OutlinePoint[];
  readonly chosen: DaySpan;
  onChoose(span: DaySpan): void;
}

/** Number of the day at a place of the picture; it may lie outside of the record. */
function dayAt(event: PointerEvent, picture: SVGSVGElement, firstDay: number): number {
  const place = new DOMPoint(event.clientX, event.clientY).matrixTransform(picture.getScreenCTM()!.inverse());
  const week = Math.floor(place.x / STEP);
  const row = Math.min(6, Math.max(0, Math.floor((place.y - TOP) / STEP)));
  return firstDay - placeOf(firstDay, firstDay).row + 7 * week + row;
}

/** Days of the record in weeks, each as full as it is covered; drawing over them chooses them. */
export function Calendar({ days, chosen, onChoose }: CalendarProps) {
  const picture = useRef<SVGSVGElement>(null);
  const [drag, setDrag] = useState<readonly [number, number] | null>(null);
  const numbers = useMemo(() => days.map(({ atMs }) => dayNumber(atMs - 1)), [days]);
  const [first, last] = [numbers[0]!, numbers.at(-1)!];
  const spanOf = ([a, b]: readonly [number, number]): DaySpan => ({
    first: dayOf(Math.max(first, Math.min(a, b)) * DAY_MS),
    last: dayOf(Math.min(last, Math.max(a, b)) * DAY_MS),
  });
  const shown = drag ? spanOf(drag) : chosen;
  const at = (event: PointerEvent): number => dayAt(event, picture.current!, first);
  const isChosen = (day: number): boolean =>
    dayOf(day * DAY_MS) >= shown.first && dayOf(day * DAY_MS) <= shown.last;
  const weeks = placeOf(last, first).week + 1;
  return (
    <div class="scroll-x" tabIndex={0} role="region" aria-label={words.review.calendar}>
      <svg
        class="calendar"
        ref={picture}
        width={weeks * STEP}
        height={TOP + 7 * STEP}
        viewBox={`0 0 ${weeks * STEP} ${TOP + 7 * STEP}`}
        role="img"
        aria-label={words.review.calendarLabel(days.length, dayOf(first * DAY_MS), dayOf(last * DAY_MS))}
        onPointerDown={(event) => {
          picture.current!.setPointerCapture(event.pointerId);
          setDrag([at(event), at(event)]);
        }}
        onPointerMove={(event) => drag && setDrag([drag[0], at(event)])}
        onPointerUp={() => {
          if (drag) onChoose(spanOf(drag));
          setDrag(null);
        }}
        onPointerCancel={() => setDrag(null)}
      >
        <Months first={first} last={last} />
        {days.map((day, i) => {
          const { week, row } = placeOf(numbers[i]!, first);
          const tall = Math.max(1, SIDE * day.coverage);
          return (
            <g key={day.atMs} transform={`translate(${week * STEP} ${TOP + row * STEP})`}>
              <rect class={isChosen(numbers[i]!) ? 'day chosen' : 'day'} width={SIDE} height={SIDE} />
              <rect class="covered" y={SIDE - tall} width={SIDE} height={tall} />
              <title>{`${dayOf(day.atMs - 1)}: ${shownNumber(100 * day.coverage, 0)} %`}</title>
            </g>
          );
        })}
      </svg>
    </div>
  );
}

/** Names of the months above their first week. */
function Months({ first, last }: { readonly first: number; readonly last: number }) {
  const names: { readonly week: number; readonly name: string }[] = [];
  for (let day = first; day <= last; day++) {
    const text = dayOf(day * DAY_MS);
    if (text.endsWith('-01')) names.push({ week: placeOf(day, first).week, name: text.slice(0, 7) });
  }
  return (
    <>
      {names.map(({ week, name }) => (
        <text key={name} x={week * STEP} y="10">
          {name.endsWith('-01') || names.length < 13 ? name : name.slice(5)}
        </text>
      ))}
    </>
  );
}
