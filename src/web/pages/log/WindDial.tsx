import { shownDegrees, shownNumber } from '../../parts/numbers.ts';
import type { LiveWind } from '../../record/recordData.ts';
import { words } from '../../words/en.ts';
import { onDial, ringPart } from './windArc.ts';

/** Steps that are still told apart on the dial. [-] */
const TICKS_MOST = 120;

const points = [
  ['N', 0],
  ['E', 90],
  ['S', 180],
  ['W', 270],
] as const;

/** Speed as it is shown; words where there is none. */
export function speedText(speed: number | null): string {
  return speed === null ? words.log.noSpeed : `${shownNumber(speed, 1)} m/s`;
}

/** Means of two and of ten minutes, the latter with its spread. */
function Means({ tenMinutes, twoMinutes }: Pick<LiveWind, 'tenMinutes' | 'twoMinutes'>) {
  return (
    <>
      {tenMinutes.headingDeg === null ? null : (
        <path
          class="ten"
          d={ringPart(
            tenMinutes.headingDeg - (tenMinutes.spreadDeg ?? 0),
            tenMinutes.headingDeg + (tenMinutes.spreadDeg ?? 0) + 0.1,
            [103, 103],
          )}
        />
      )}
      {twoMinutes.headingDeg === null ? null : (
        <path class="two" d={`M${onDial(twoMinutes.headingDeg, 98)}L${onDial(twoMinutes.headingDeg, 106)}`} />
      )}
    </>
  );
}

/** The wind of now on the maker's own circle: one tick a position, the pointer as wide as the reading is. */
export function WindDial({ wind, positions }: { readonly wind: LiveWind; readonly positions: number }) {
  const { headingDeg, halfWidthDeg, speedMPerS } = wind;
  const { log } = words;
  const heading = headingDeg === null ? log.calm : shownDegrees(headingDeg, 1);
  const width = halfWidthDeg === null ? '' : `, ${log.within(shownDegrees(halfWidthDeg, 1))}`;
  const text = log.dialText(heading, width, speedText(speedMPerS));
  const ticks = Math.min(positions, TICKS_MOST);
  return (
    <svg class="wind-dial" viewBox="-120 -120 240 240" role="img" aria-label={`${log.dialName}: ${text}`}>
      <circle class="plate" r="100" />
      <path
        class="ticks"
        d={Array.from({ length: ticks }, (_, i) => {
          const at = (360 * i) / ticks;
          return `M${onDial(at, 100)}L${onDial(at, 94)}`;
        }).join('')}
      />
      {points.map(([name, at]) => (
        <text key={name} x={onDial(at, 111).split(' ')[0]} y={onDial(at, 111).split(' ')[1]}>
          {name}
        </text>
      ))}
      <Means {...wind} />
      {headingDeg === null ? null : (
        <g>
          {halfWidthDeg === null ? null : (
            <path
              class="width"
              d={ringPart(headingDeg - halfWidthDeg, headingDeg + halfWidthDeg, [48, 92])}
            />
          )}
          <path class="pointer" d={`M${onDial(headingDeg, 92)}L${onDial(headingDeg, 48)}`} />
          <path
            class="tip"
            d={`M${onDial(headingDeg, 46)}L${onDial(headingDeg - 6, 58)}L${onDial(headingDeg + 6, 58)}Z`}
          />
        </g>
      )}
      <text class="reading" y={headingDeg === null ? 0 : -6}>
        {headingDeg === null ? log.none : shownDegrees(headingDeg, 1)}
      </text>
      <text class="below" y="14">
        {headingDeg === null || halfWidthDeg === null ? '' : `± ${shownDegrees(halfWidthDeg, 1)}`}
      </text>
      <text class="below" y="30">
        {speedMPerS === null ? '' : speedText(speedMPerS)}
      </text>
    </svg>
  );
}
