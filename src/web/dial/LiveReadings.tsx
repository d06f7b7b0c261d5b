import { useEffect, useRef } from 'preact/hooks';
import { shownDegrees, shownNumber } from '../parts/numbers.ts';
import { words } from '../words/en.ts';
import type { LiveModel } from './liveModel.ts';
import type { Turn } from './turn.ts';

const names = ['angle', 'word', 'heading', 'truth', 'error', 'worst'] as const;

/** Writes into places of the page, and only what has changed. */
function writer() {
  const places: Record<string, HTMLElement | null> = {};
  const written: Record<string, string> = {};
  return {
    place: (name: string) => (element: HTMLElement | null) => {
      places[name] = element;
      delete written[name];
    },
    write(name: string, text: string): void {
      const place = places[name];
      if (!place || written[name] === text) return;
      written[name] = text;
      place.textContent = text;
    },
    style(name: string, property: string, value: string): void {
      const key = name + property;
      const place = places[name];
      if (!place || written[key] === value) return;
      written[key] = value;
      place.style.setProperty(property, value);
    },
    flag(name: string, isOn: boolean): void {
      places[name]?.toggleAttribute('data-on', isOn);
    },
  };
}

/** Angle, word and heading with the error, and the counts of every channel between its thresholds, as the shaft turns. */
export function LiveReadings({ model, turn }: { readonly model: LiveModel; readonly turn: Turn }) {
  const { current: page } = useRef(writer());
  useEffect(() => {
    const { live } = model;
    const scale = 2 ** model.head.board.converterBits;
    return turn.watch((elapsedMs) => {
      model.follow(turn, elapsedMs);
      page.write('angle', shownDegrees(turn.angleDeg, 1));
      page.write('word', live.word);
      page.write('heading', model.headingDeg === null ? words.disc.none : shownDegrees(model.headingDeg, 1));
      page.write('truth', shownDegrees(model.trueDeg, 1));
      page.write('error', model.errorDeg === null ? words.disc.illegal : shownDegrees(model.errorDeg, 1));
      page.write('worst', shownDegrees(model.worstDeg, 1));
      page.flag('readings', model.errorDeg === null);
      for (let c = 0; c < live.channels.length; c++) {
        const { counts, level } = live.channels[c]!;
        page.style(`fill${c}`, 'transform', `scaleX(${(counts[0]! / scale).toFixed(3)})`);
        const whole =
          counts.length === 1 ? String(Math.floor(counts[0]!)) : Array.from(counts, Math.floor).join(' ');
        page.write(`counts${c}`, whole);
        page.write(`level${c}`, String(level));
      }
    });
  }, [model, turn, page]);
  const { channels } = model.live;
  const scale = 2 ** model.head.board.converterBits;
  return (
    <>
      <dl class="readings" ref={page.place('readings')}>
        {names.map((name) => (
          <div key={name} class={name}>
            <dt>{words.disc[name]}</dt>
            <dd ref={page.place(name)} />
          </div>
        ))}
      </dl>
      <div class="levels" role="group" aria-label={words.disc.counts(shownNumber(scale, 0))}>
        {channels.map(({ thresholds }, channel) => (
          <div class="level" key={channel}>
            <span>{words.disc.channel(channel)}</span>
            <div class="track" aria-hidden="true">
              <div class="fill" ref={page.place(`fill${channel}`)} />
              {thresholds.map((counts) => (
                <div
                  class="threshold"
                  key={counts}
                  style={{ left: `${Math.min(1, Math.max(0, counts / scale)) * 100}%` }}
                />
              ))}
            </div>
            <span class="counts" ref={page.place(`counts${channel}`)} />
            <b ref={page.place(`level${channel}`)} />
          </div>
        ))}
      </div>
    </>
  );
}
