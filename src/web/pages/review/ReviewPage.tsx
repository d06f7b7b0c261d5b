import { useEffect, useState } from 'preact/hooks';
import type { Problem } from '../../../core/error/index.ts';
import { Problems } from '../../parts/Problems.tsx';
import { saveFile } from '../../parts/saveFile.ts';
import { Verdict } from '../../parts/Verdict.tsx';
import { useStore } from '../../project/store.ts';
import { NoRecord } from '../../record/NoRecord.tsx';
import { daysOf, recordState, seriesOf, type Station } from '../../record/recordData.ts';
import { useAsked } from '../../record/useLive.ts';
import { connection, Refused, servedRecord } from '../../server/askServer.ts';
import { words } from '../../words/en.ts';
import { Calendar } from './Calendar.tsx';
import { daysTouched, lastDays, windowOf, type DaySpan } from './days.ts';
import { PeriodChoice } from './PeriodChoice.tsx';
import { Pictures, Tables } from './ReviewParts.tsx';
import { ReviewSeries } from './ReviewSeries.tsx';
import { askReview, type ShownReview } from './shownReview.ts';
import './review.css';

const text = words.review;
/** Points of a series: more than a wide screen has. [-] */
const POINTS = 1500;
const MINUTE_MS = 60_000;

/** The review of a window; the one before stays until it is there. */
function useReview(station: string, span: DaySpan) {
  const [review, setReview] = useState<ShownReview | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [isBusy, setBusy] = useState(true);
  const window = windowOf(span);
  useEffect(() => {
    if (window === null) return;
    const stopper = new AbortController();
    setBusy(true);
    askReview(station, window, stopper.signal)
      .then(
        (found) => {
          setReview(found);
          setProblems([]);
        },
        (error: unknown) => {
          if (error instanceof Refused) setProblems(error.problems);
        },
      )
      .finally(() => {
        if (!stopper.signal.aborted) setBusy(false);
      });
    return () => stopper.abort();
  }, [station, span.first, span.last]);
  return { review, problems, isBusy };
}

/** Answer, pictures and tables of a review. */
function Result({ review }: { readonly review: ShownReview }) {
  return (
    <>
      <section class="panel">
        <h2>{text.answer}</h2>
        <ul class="review-answer">
          {review.answer.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
        <button type="button" class="first" onClick={() => saveFile('review.html', review.page)}>
          {text.savePage}
        </button>
      </section>
      <div class="review-pictures">
        <Pictures {...review} />
      </div>
      <Tables {...review} />
    </>
  );
}

/** One station: choose a time, see it. */
function StationReview({ station }: { readonly station: Station }) {
  const name = station.station;
  const [span, setSpan] = useState(() => lastDays(station.lastMs, 30));
  const days = useAsked(() => daysOf(name), 10 * MINUTE_MS, name);
  const window = windowOf(span);
  const series = useAsked(
    window === null ? null : () => seriesOf(name, window, POINTS),
    10 * MINUTE_MS,
    `${name} ${span.first} ${span.last}`,
  );
  const { review, problems, isBusy } = useReview(name, span);
  const says = isBusy || !review ? 'wait' : review.reasons.length === 0 ? 'yes' : 'no';
  return (
    <div class="review-parts">
      <PeriodChoice station={station} span={span} onChoose={setSpan} />
      {days && days.length > 0 ? (
        <section class="panel">
          <h2>{text.calendar}</h2>
          <p>{text.calendarHint}</p>
          <Calendar days={days} chosen={span} onChoose={setSpan} />
        </section>
      ) : null}
      {series ? (
        <ReviewSeries
          {...series}
          onBrush={(sinceMs, untilMs) => setSpan(daysTouched(Math.round(sinceMs), Math.round(untilMs)))}
        />
      ) : null}
      <Problems problems={problems} />
      <div class="review-parts" aria-busy={isBusy}>
        {review && problems.length === 0 ? <Result review={review} /> : null}
      </div>
      <Verdict says={says} next="explain">
        {says === 'wait' ? text.saysWait : says === 'yes' ? text.saysYes : review?.reasons.join(' ')}
      </Verdict>
    </div>
  );
}

/** What months of wind come to. */
export function ReviewPage() {
  const isServed = useStore(connection) !== 'none';
  const record = useStore(servedRecord);
  const state = useAsked(record === null ? null : recordState, MINUTE_MS, '');
  const [wanted, choose] = useState<string | null>(null);
  if (!isServed || record === null || state?.stations.length === 0)
    return <NoRecord isEmpty={isServed && record !== null} name={record ?? ''} next="explain" />;
  if (state === null) return <p>{words.shell.reading}</p>;
  const station = state.stations.find((known) => known.station === wanted) ?? state.stations[0]!;
  return (
    <>
      {state.stations.length < 2 ? null : (
        <div class="field">
          <label>
            {text.station}{' '}
            <select value={station.station} onChange={(event) => choose(event.currentTarget.value)}>
              {state.stations.map((known) => (
                <option key={known.station}>{known.station}</option>
              ))}
            </select>
          </label>
        </div>
      )}
      <StationReview key={station.station} station={station} />
    </>
  );
}
