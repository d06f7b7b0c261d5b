import { useEffect, useRef } from 'preact/hooks';
import type { DesignView } from '../engine/designView.ts';
import { shownDegrees } from '../parts/numbers.ts';
import { words } from '../words/en.ts';
import type { LiveModel } from './liveModel.ts';
import type { Turn } from './turn.ts';
import { Sensors } from './Sensors.tsx';
import { useTurning } from './useTurning.ts';
import './dial.css';

interface DiscDialProps {
  readonly view: DesignView;
  readonly model: LiveModel;
  readonly turn: Turn;
}

/** Room round the disc for the head's line, as a share of its radius. [-] */
const MARGIN = 0.14;

/** The disc as the sensors see it: it turns under drag, wheel, keys and touch; lights and sensors stand still. */
export function DiscDial({ view, model, turn }: DiscDialProps) {
  const dial = useRef<SVGSVGElement>(null);
  const disc = useRef<SVGGElement>(null);
  const beams = useRef<(SVGCircleElement | null)[]>([]);
  useTurning(dial, turn);
  const radius = view.instrument.disc.diameterMm / 2;
  useEffect(
    () =>
      turn.watch(() => {
        disc.current!.style.transform = `rotate(${-turn.angleDeg}deg)`;
        const read = model.readAt(turn.angleDeg, turn.sense);
        const heading = model.headingOf(read.position);
        const svg = dial.current!;
        svg.setAttribute('aria-valuenow', turn.angleDeg.toFixed(1));
        const shown = heading === null ? words.disc.none : shownDegrees(heading);
        svg.setAttribute(
          'aria-valuetext',
          words.disc.dialText(shownDegrees(turn.angleDeg, 1), read.word, shown),
        );
        for (const [channel, beam] of beams.current.entries()) {
          beam?.style.setProperty(
            'opacity',
            String(0.08 + 0.92 * Math.min(1, Math.max(0, model.lightAt(channel, turn.angleDeg)))),
          );
        }
      }),
    [model, turn],
  );
  const half = radius * (1 + MARGIN);
  return (
    <svg
      class="dial"
      ref={dial}
      viewBox={`${-half} ${-half} ${2 * half} ${2 * half}`}
      role="slider"
      tabIndex={0}
      aria-label={words.disc.dialName}
      aria-describedby="dial-hint"
      aria-valuemin={0}
      aria-valuemax={360}
      aria-valuenow={0}
    >
      <g class="turning" ref={disc}>
        <path class="material" d={view.discPath} fill-rule="evenodd" />
        <path
          class="index"
          d={`M0 ${-radius * 1.02}l${radius * 0.035} ${-radius * 0.07}h${-radius * 0.07}z`}
        />
      </g>
      <path class="line" d={`M0 0V${-half}`} />
      <Sensors
        channels={model.head.channels}
        spotMm={Math.max(radius * 0.028, 0.9)}
        onBeam={(channel, circle) => void (beams.current[channel] = circle)}
      />
    </svg>
  );
}
