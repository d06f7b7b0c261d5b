import { useMemo } from 'preact/hooks';
import type { OutlinePoint } from '../../record/recordData.ts';
import { SeriesPlot } from '../../record/SeriesPlot.tsx';
import { words } from '../../words/en.ts';

interface ReviewSeriesProps {
  readonly stepMs: number;
  readonly points: readonly OutlinePoint[];
  onBrush(sinceMs: number, untilMs: number): void;
}

/** Points with an empty one in every gap, so that no line is drawn over it. */
function withGaps(points: readonly OutlinePoint[], stepMs: number): OutlinePoint[] {
  return points.flatMap((point, i) => {
    const before = points[i - 1];
    if (!before || point.atMs - before.atMs <= 1.5 * stepMs) return [point];
    const atMs = before.atMs + stepMs;
    return [{ atMs, coverage: 0, headingDeg: null, meanMPerS: null, mostMPerS: null }, point];
  });
}

/** Heading and speed of the chosen time. */
export function ReviewSeries({ stepMs, points, onBrush }: ReviewSeriesProps) {
  const { review } = words;
  const { atMs, heading, speed } = useMemo(() => {
    const all = withGaps(points, stepMs);
    return {
      atMs: all.map((point) => point.atMs),
      heading: [
        {
          name: review.heading,
          values: all.map(({ headingDeg }) => headingDeg),
          kind: 'dots' as const,
          colour: '--accent' as const,
        },
      ],
      speed: [
        {
          name: review.most,
          values: all.map(({ mostMPerS }) => mostMPerS),
          kind: 'line' as const,
          colour: '--faint' as const,
        },
        {
          name: review.mean,
          values: all.map(({ meanMPerS }) => meanMPerS),
          kind: 'line' as const,
          colour: '--accent' as const,
        },
      ],
    };
  }, [points, stepMs]);
  return (
    <section class="panel">
      <h2>{review.series}</h2>
      <p>
        {review.seriesHint} {review.step(stepMs / 60_000)}
      </p>
      <SeriesPlot
        label={review.headingLabel}
        atMs={atMs}
        series={heading}
        unit="°"
        range={[0, 360]}
        onBrush={onBrush}
      />
      <SeriesPlot label={review.speedLabel} atMs={atMs} series={speed} unit="m/s" onBrush={onBrush} />
    </section>
  );
}
