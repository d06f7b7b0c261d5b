import type { ChannelPlan } from '../../core/head/index.ts';
import type { Places } from './places.ts';

interface SensorsProps {
  readonly channels: readonly ChannelPlan[];
  readonly places: Places;
  /** Hears of the circle that shows a channel's light. */
  onBeam(channel: number, circle: SVGCircleElement | null): void;
}

/** The sensors where they stand on the head; their light is shown inside. */
export function Sensors({ channels, places, onBeam }: SensorsProps) {
  const { spotMm } = places;
  return (
    <>
      {channels.map((channel) => {
        const { x, y } = places.sensor(channel);
        return (
          <g key={channel.channel}>
            <circle class="sensor" cx={x} cy={y} r={spotMm * 1.35} />
            <circle class="beam" cx={x} cy={y} r={spotMm} ref={(circle) => onBeam(channel.channel, circle)} />
          </g>
        );
      })}
    </>
  );
}
