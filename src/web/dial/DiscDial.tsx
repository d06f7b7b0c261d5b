import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { DesignView } from '../engine/designView.ts';
import { shownDegrees } from '../parts/numbers.ts';
import { words } from '../words/en.ts';
import { DiscPicture } from './DiscPicture.tsx';
import type { LiveModel } from './liveModel.ts';
import { placesOf } from './places.ts';
import { Sensors } from './Sensors.tsx';
import type { Turn } from './turn.ts';
import { useTurning } from './useTurning.ts';
import './dial.css';

interface DiscDialProps {
  readonly view: DesignView;
  readonly model: LiveModel;
  readonly turn: Turn;
  readonly name: string;
}

/** A screen reader is told of a turn this often at most. [ms] */
const TELL_EVERY_MS = 300;

/** The disc as the sensors see it: it turns under drag, wheel, keys and touch; lights and sensors stand still. */
export function DiscDial({ view, model, turn, name }: DiscDialProps) {
  const dial = useRef<HTMLDivElement>(null);
  const disc = useRef<HTMLDivElement>(null);
  const beams = useRef<(SVGCircleElement | null)[]>([]);
  const places = useMemo(() => placesOf(view), [view]);
  useTurning(dial, turn);
  useEffect(() => {
    let sinceTold = Infinity;
    const shown = new Float64Array(model.live.channels.length).fill(-1);
    return turn.watch((elapsedMs) => {
      const [pattern, element] = [disc.current, dial.current];
      // A page that is being left is drawn no more.
      if (!pattern || !element) return;
      model.follow(turn, elapsedMs);
      pattern.style.transform = places.transform(turn.angleDeg);
      for (let c = 0; c < shown.length; c++) {
        // Steps that an eye can tell: what has not changed is not painted.
        const light = Math.round(Math.min(1, model.live.channels[c]!.light) * 24) / 24;
        if (light === shown[c]) continue;
        shown[c] = light;
        beams.current[c]?.style.setProperty('opacity', String(0.06 + 0.94 * light));
      }
      sinceTold += elapsedMs;
      if (sinceTold < TELL_EVERY_MS && turn.spinDegPerS !== 0) return;
      sinceTold = 0;
      tell(element, model, turn);
    });
  }, [model, turn, places]);
  const { x, y, width, height } = places.viewBox;
  return (
    <div
      class={view.strip ? 'dial strip' : 'dial'}
      ref={dial}
      role="slider"
      tabIndex={0}
      aria-label={name}
      aria-describedby="dial-hint"
      aria-valuemin={0}
      aria-valuemax={360}
      aria-valuenow={0}
    >
      <div class="turning" ref={disc}>
        <DiscPicture view={view} places={places} />
      </div>
      <svg class="fixed" viewBox={`${x} ${y} ${width} ${height}`} aria-hidden="true">
        <path class="line" d={view.strip ? `M0 ${y}V${y + height}` : `M0 0V${y}`} />
        <Sensors
          channels={model.head.channels}
          places={places}
          onBeam={(channel, circle) => void (beams.current[channel] = circle)}
        />
      </svg>
    </div>
  );
}

function tell(dial: HTMLElement, model: LiveModel, turn: Turn): void {
  const heading = model.headingDeg === null ? words.disc.none : shownDegrees(model.headingDeg);
  dial.setAttribute('aria-valuenow', turn.angleDeg.toFixed(1));
  dial.setAttribute(
    'aria-valuetext',
    words.disc.dialText(shownDegrees(turn.angleDeg, 1), model.live.word, heading),
  );
}
