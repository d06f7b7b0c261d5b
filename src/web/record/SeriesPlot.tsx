import { useEffect, useRef } from 'preact/hooks';
import type uPlot from 'uplot';
import { useStore } from '../project/store.ts';
import { shownNumber } from '../parts/numbers.ts';
import { theme } from '../shell/theme.ts';
import './seriesPlot.css';

/** One line or cloud of a plot. */
export interface PlottedSeries {
  readonly name: string;
  readonly values: readonly (number | null)[];
  readonly kind: 'line' | 'dots';
  /** Variable of the look that colours it. */
  readonly colour: '--accent' | '--ink' | '--faint';
}

interface SeriesPlotProps {
  /** What is seen, for those who do not see it. */
  readonly label: string;
  /** [ms UTC] */
  readonly atMs: readonly number[];
  readonly series: readonly PlottedSeries[];
  readonly unit: string;
  /** Ends of the scale; the data's own where not given. */
  readonly range?: readonly [number, number];
  /** Hears of a stretch that was drawn over. [ms UTC] */
  onBrush?(sinceMs: number, untilMs: number): void;
}

const HEIGHT = 180;

/** An instant as an axis says it: no finer than its steps. [s UTC] */
function timeText(at: number, stepS: number): string {
  const text = new Date(at * 1000).toISOString();
  if (stepS >= 86_400 || at % 86_400 === 0) return text.slice(0, 10);
  return text.slice(11, stepS < 60 ? 19 : 16);
}

function optionsOf(kit: typeof uPlot, props: SeriesPlotProps, width: number): uPlot.Options {
  const style = getComputedStyle(document.documentElement);
  const colour = (name: string): string => style.getPropertyValue(name).trim();
  const axis = {
    stroke: colour('--faint'),
    grid: { stroke: colour('--line'), width: 1 },
    ticks: { stroke: colour('--line'), width: 1 },
    font: '12px ui-sans-serif, system-ui, sans-serif',
  };
  const { range, unit, series, onBrush } = props;
  return {
    width,
    height: HEIGHT,
    tzDate: (seconds) => kit.tzDate(new Date(seconds * 1000), 'Etc/UTC'),
    legend: { live: false, show: series.length > 1 },
    cursor: { drag: { x: onBrush !== undefined, y: false, setScale: false }, points: { show: false } },
    scales: { y: range ? { range: [range[0], range[1]] } : {} },
    axes: [
      {
        ...axis,
        space: 90,
        values: (_plot, values, _axis, _space, step) => values.map((at) => timeText(at, step)),
      },
      {
        ...axis,
        size: 64,
        values: (_plot, values) => values.map((value) => `${shownNumber(value, 1)} ${unit}`),
        ...(range?.[1] === 360 ? { splits: () => [0, 90, 180, 270, 360] } : {}),
      },
    ],
    series: [
      {},
      ...series.map(({ name, kind, colour: own }) => ({
        label: name,
        stroke: colour(own),
        width: kind === 'line' ? 1.5 : 0,
        spanGaps: false,
        points:
          kind === 'dots' ? { show: true, size: 4, fill: colour(own), stroke: colour(own) } : { show: false },
      })),
    ],
    hooks: {
      setSelect: [
        (plot) => {
          const { left, width: wide } = plot.select;
          if (wide < 4 || !onBrush) return;
          onBrush(1000 * plot.posToVal(left, 'x'), 1000 * plot.posToVal(left + wide, 'x'));
          plot.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false);
        },
      ],
    },
  };
}

const dataOf = ({ atMs, series }: SeriesPlotProps): uPlot.AlignedData =>
  [atMs.map((at) => at / 1000), ...series.map(({ values }) => [...values])] as unknown as uPlot.AlignedData;

/** A series over time; its plotting is fetched when it is first shown. */
export function SeriesPlot(props: SeriesPlotProps) {
  const place = useRef<HTMLDivElement>(null);
  const plot = useRef<uPlot | null>(null);
  const last = useRef(props);
  last.current = props;
  const look = useStore(theme);
  useEffect(() => {
    let isWanted = true;
    let observer: ResizeObserver | null = null;
    void import('./plotKit.ts').then(({ plotKit }) => {
      if (!isWanted || !place.current) return;
      const width = place.current.clientWidth;
      const onBrush = props.onBrush && ((a: number, b: number) => last.current.onBrush?.(a, b));
      const made = new plotKit(
        optionsOf(plotKit, { ...last.current, ...(onBrush ? { onBrush } : {}) }, width),
        dataOf(last.current),
        place.current,
      );
      plot.current = made;
      observer = new ResizeObserver(([entry]) =>
        made.setSize({ width: entry!.contentRect.width, height: HEIGHT }),
      );
      observer.observe(place.current);
    });
    return () => {
      isWanted = false;
      observer?.disconnect();
      plot.current?.destroy();
      plot.current = null;
    };
  }, [look]);
  useEffect(() => plot.current?.setData(dataOf(props)), [props.atMs, props.series]);
  return <div class="series-plot" ref={place} role="img" aria-label={props.label} />;
}
