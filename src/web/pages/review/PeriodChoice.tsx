import type { Station } from '../../record/recordData.ts';
import { words } from '../../words/en.ts';
import { dayOf, daysTouched, lastDays, type DaySpan } from './days.ts';

const text = words.review;

interface PeriodChoiceProps {
  readonly station: Station;
  readonly span: DaySpan;
  onChoose(span: DaySpan): void;
}

/** The time to review, by its days. */
export function PeriodChoice({ station, span, onChoose }: PeriodChoiceProps) {
  const { firstMs, lastMs } = station;
  const limits = { min: dayOf(firstMs), max: dayOf(lastMs) };
  const presets = [
    [text.week, lastDays(lastMs, 7)],
    [text.month, lastDays(lastMs, 30)],
    [text.year, lastDays(lastMs, 365)],
    [text.whole, daysTouched(firstMs, lastMs + 1)],
  ] as const;
  return (
    <section class="panel">
      <div class="period">
        <label>
          {text.since}
          <input
            type="date"
            {...limits}
            value={span.first}
            onChange={(event) => onChoose({ ...span, first: event.currentTarget.value })}
          />
        </label>
        <label>
          {text.until}
          <input
            type="date"
            {...limits}
            value={span.last}
            onChange={(event) => onChoose({ ...span, last: event.currentTarget.value })}
          />
        </label>
        {presets.map(([name, days]) => (
          <button
            key={name}
            type="button"
            aria-pressed={days.first === span.first && days.last === span.last}
            onClick={() => onChoose(days)}
          >
            {name}
          </button>
        ))}
      </div>
      <p>{text.utc}</p>
    </section>
  );
}
