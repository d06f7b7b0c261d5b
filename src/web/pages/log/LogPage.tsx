import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { shownDegrees } from '../../parts/numbers.ts';
import { Verdict } from '../../parts/Verdict.tsx';
import { useStore } from '../../project/store.ts';
import {
  daysOf,
  recordState,
  samplesSince,
  type LiveWind,
  type SeenSample,
} from '../../record/recordData.ts';
import { NoRecord } from '../../record/NoRecord.tsx';
import { SeriesPlot } from '../../record/SeriesPlot.tsx';
import { useAsked, useLive, useNow } from '../../record/useLive.ts';
import { connection, servedRecord } from '../../server/askServer.ts';
import type { PageParts } from '../../shell/pageParts.ts';
import { words } from '../../words/en.ts';
import { Channels, CoveredDays, Ledger } from './LogParts.tsx';
import { speedText, WindDial } from './WindDial.tsx';
import './log.css';

const { log } = words;
const HOUR_MS = 3_600_000;
/** A reading older than this means that something is wrong. [ms] */
const OLD_MS = 120_000;
/** Points drawn of the last hour at most. [-] */
const DRAWN_MOST = 3600;

/** Samples of the last hour: asked for once, then continued by what comes. */
function useRecent(station: string | null, lastMs: number | null, wind: LiveWind | undefined) {
  const [samples, setSamples] = useState<readonly SeenSample[]>([]);
  const isAsked = useRef('');
  useEffect(() => {
    if (station === null || lastMs === null || isAsked.current === station) return;
    isAsked.current = station;
    setSamples([]);
    samplesSince(station, lastMs - HOUR_MS).then(
      (found) => isAsked.current === station && setSamples(found),
      () => (isAsked.current = ''),
    );
  }, [station, lastMs === null]);
  useEffect(() => {
    if (wind === undefined || wind.station !== station) return;
    setSamples((known) => {
      if ((known.at(-1)?.atMs ?? -Infinity) >= wind.atMs) return known;
      const first = known.findIndex(({ atMs }) => atMs > wind.atMs - HOUR_MS);
      return [...known.slice(first < 0 ? known.length : first), wind];
    });
  }, [wind]);
  return samples;
}

/** The last hour as two plots. */
function Recent({ samples }: { readonly samples: readonly SeenSample[] }) {
  const drawn = samples.slice(-DRAWN_MOST);
  const atMs = useMemo(() => drawn.map((sample) => sample.atMs), [samples]);
  const headings = useMemo(
    () => [
      {
        name: log.from,
        values: drawn.map(({ headingDeg }) => headingDeg),
        kind: 'dots' as const,
        colour: '--accent' as const,
      },
    ],
    [samples],
  );
  const speeds = useMemo(
    () => [
      {
        name: log.speed,
        values: drawn.map(({ speedMPerS }) => speedMPerS),
        kind: 'line' as const,
        colour: '--ink' as const,
      },
    ],
    [samples],
  );
  return (
    <section class="panel">
      <h2>{log.recent}</h2>
      <SeriesPlot label={log.recentHeading} atMs={atMs} series={headings} unit="°" range={[0, 360]} />
      {drawn.some(({ speedMPerS }) => speedMPerS !== null) ? (
        <SeriesPlot label={log.recentSpeed} atMs={atMs} series={speeds} unit="m/s" />
      ) : null}
      <p class="hint">{log.utc}</p>
    </section>
  );
}

/** The last reading in figures. */
function Figures({ wind, nowMs }: { readonly wind: LiveWind; readonly nowMs: number }) {
  const degrees = (value: number | null): string => (value === null ? log.calm : shownDegrees(value, 1));
  const { twoMinutes, tenMinutes, gust } = wind;
  return (
    <>
      <p>{log.age(Math.max(0, Math.round((nowMs - wind.atMs) / 1000)))}</p>
      <dl class="figures">
        <dt>{log.from}</dt>
        <dd>{degrees(wind.headingDeg)}</dd>
        <dt>{log.speed}</dt>
        <dd>{speedText(wind.speedMPerS)}</dd>
        <dt>{log.gust}</dt>
        <dd>{speedText(gust?.speedMPerS ?? null)}</dd>
        <dt>{log.two}</dt>
        <dd>
          {degrees(twoMinutes.headingDeg)}, {speedText(twoMinutes.speedMPerS)}
        </dd>
        <dt>{log.ten}</dt>
        <dd>
          {degrees(tenMinutes.headingDeg)}, {speedText(tenMinutes.speedMPerS)}
        </dd>
        <dt>{log.spread}</dt>
        <dd>{tenMinutes.spreadDeg === null ? log.calm : shownDegrees(tenMinutes.spreadDeg, 1)}</dd>
      </dl>
      <p class="hint">{wind.halfWidthDeg === null ? log.noWidth : log.legend}</p>
    </>
  );
}

/** Every station with its wind; one of them is looked at. */
function Stations({
  names,
  winds,
  chosen,
  choose,
}: {
  readonly names: readonly string[];
  readonly winds: ReadonlyMap<string, LiveWind>;
  readonly chosen: string | null;
  choose(name: string): void;
}) {
  if (names.length < 2) return null;
  return (
    <ul class="stations-list" aria-label={log.stations}>
      {names.map((name) => (
        <li key={name}>
          <button type="button" aria-pressed={name === chosen} onClick={() => choose(name)}>
            {name}
            <small>
              {winds.get(name)?.headingDeg == null ? '' : shownDegrees(winds.get(name)!.headingDeg!, 0)}
            </small>
          </button>
        </li>
      ))}
    </ul>
  );
}

/** What the wind does now, and whether every sample is kept. */
export function LogPage({ project }: PageParts) {
  const isServed = useStore(connection) !== 'none';
  const record = useStore(servedRecord);
  const positions = useStore(project.state, (state) => state.design?.instrument.need.positions ?? 36);
  const [wanted, choose] = useState<string | null>(null);
  const [last, hear] = useState<LiveWind>();
  const winds = useLive(isServed && record !== null, hear);
  const state = useAsked(record === null ? null : recordState, 5000, '');
  const nowMs = useNow();
  const names = [...new Set([...(state?.stations.map(({ station }) => station) ?? []), ...winds.keys()])];
  const chosen = wanted ?? names[0] ?? null;
  const span = state?.stations.find(({ station }) => station === chosen);
  const wind = chosen === null ? undefined : winds.get(chosen);
  const samples = useRecent(chosen, span?.lastMs ?? wind?.atMs ?? null, last);
  const days = useAsked(chosen === null || !span ? null : () => daysOf(chosen), 60_000, chosen ?? '');
  if (!isServed || record === null || (state && names.length === 0))
    return <NoRecord isEmpty={isServed && record !== null} name={record ?? ''} next="review" />;
  const isFresh = wind !== undefined && nowMs - wind.atMs < OLD_MS;
  const isLogged = state?.logging !== 'nobody';
  return (
    <>
      <Stations names={names} winds={winds} chosen={chosen} choose={choose} />
      <div class="halves">
        <div>{wind ? <WindDial wind={wind} positions={positions} /> : <p>{words.shell.reading}</p>}</div>
        <section class="panel">
          <h2>{chosen}</h2>
          {wind ? <Figures wind={wind} nowMs={nowMs} /> : null}
          {state ? <p>{log.logging[state.logging]}</p> : null}
          {state && !isLogged ? <pre tabIndex={0}>{log.commandLog}</pre> : null}
        </section>
      </div>
      <div class="log-parts">
        <Recent samples={samples} />
        <Channels samples={samples} />
        {days ? <CoveredDays days={days} /> : null}
        {state ? <Ledger ledger={state.ledger} /> : null}
      </div>
      <Verdict says={isFresh ? 'yes' : state === null ? 'wait' : 'no'} next="review">
        {isFresh ? log.saysLive(chosen ?? '') : isLogged ? log.saysOld : log.saysNobody}
      </Verdict>
    </>
  );
}
