import { useEffect, useRef } from 'preact/hooks';
import { shownDegrees } from '../parts/numbers.ts';
import { words } from '../words/en.ts';
import type { LiveModel } from './liveModel.ts';
import type { Turn } from './turn.ts';

/** Angle, word and heading, and the light on every channel against its threshold, as the shaft turns. */
export function LiveReadings({ model, turn }: { readonly model: LiveModel; readonly turn: Turn }) {
  const places = useRef<Record<string, HTMLElement | null>>({});
  const put = (name: string) => (element: HTMLElement | null) => void (places.current[name] = element);
  useEffect(
    () =>
      turn.watch(() => {
        const { position, word } = model.readAt(turn.angleDeg, turn.sense);
        const heading = model.headingOf(position);
        const show = (name: string, text: string): void => {
          const place = places.current[name];
          if (place && place.textContent !== text) place.textContent = text;
        };
        show('angle', shownDegrees(turn.angleDeg, 1));
        show('word', word);
        show('heading', heading === null ? words.disc.none : shownDegrees(heading));
        for (const channel of model.head.channels.keys()) {
          const light = Math.min(1, Math.max(0, model.lightAt(channel, turn.angleDeg)));
          places.current[`fill${channel}`]?.style.setProperty('transform', `scaleX(${light})`);
          show(`state${channel}`, word[channel] === '1' ? words.disc.lit : words.disc.dark);
        }
      }),
    [model, turn],
  );
  const { levels } = model.head;
  const middle = (levels.risingLight + levels.fallingLight) / 2;
  return (
    <>
      <dl class="readings">
        {(['angle', 'word', 'heading'] as const).map((name) => (
          <div key={name}>
            <dt>{words.disc[name]}</dt>
            <dd ref={put(name)} />
          </div>
        ))}
      </dl>
      <div class="levels" aria-hidden="true">
        {[...model.head.channels.keys()].map((channel) => (
          <div class="level" key={channel}>
            <span>{words.disc.channel(channel)}</span>
            <div class="track">
              <div class="fill" ref={put(`fill${channel}`)} />
              <div class="threshold" style={{ left: `${Math.min(1, Math.max(0, middle)) * 100}%` }} />
            </div>
            <span ref={put(`state${channel}`)} />
          </div>
        ))}
      </div>
    </>
  );
}
