import type { ChannelPlan } from '../../core/head/index.ts';

interface SensorsProps {
  readonly channels: readonly ChannelPlan[];
  /** Size of a sensor's spot on the picture. [mm] */
  readonly spotMm: number;
  /** Hears of the circle that shows a channel's light. */
  onBeam(channel: number, circle: SVGCircleElement | null): void;
}

/** The sensors where they stand on the head; their light is shown inside. */
export function Sensors({ channels, spotMm, onBeam }: SensorsProps) {
  return (
    <>
      {channels.map(({ channel, radiusMm, angleDeg }) => {
        const at = (angleDeg * Math.PI) / 180;
        const [x, y] = [radiusMm * Math.sin(at), -radiusMm * Math.cos(at)];
        return (
          <g key={channel}>
            <circle class="sensor" cx={x} cy={y} r={spotMm * 1.35} />
            <circle class="beam" cx={x} cy={y} r={spotMm} ref={(circle) => onBeam(channel, circle)} />
          </g>
        );
      })}
    </>
  );
}
