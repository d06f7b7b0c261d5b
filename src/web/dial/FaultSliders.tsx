import type { HeadPlan } from '../../core/head/index.ts';
import { ChoiceField } from '../parts/ChoiceField.tsx';
import { shownNumber } from '../parts/numbers.ts';
import { Slider } from '../parts/Slider.tsx';
import { words } from '../words/en.ts';
import { feelsLight, NO_FAULTS, type FaultSettings } from './faults.ts';

interface FaultSlidersProps {
  readonly head: HeadPlan;
  readonly faults: FaultSettings;
  onChange(faults: FaultSettings): void;
}

/** One slider: which setting, its range, and how its value is said. */
interface FaultSlider {
  readonly field: Exclude<keyof FaultSettings, 'channel'>;
  readonly name: string;
  readonly range: readonly [least: number, most: number, step: number];
  /** Whether it changes anything for a head that tells three marks apart. */
  readonly isOfLight: boolean;
  say(value: number): string;
}

const { disc } = words;
const percent = (value: number): string => `${shownNumber(value)} %`;
const mm = (value: number): string => `${shownNumber(value)} mm`;
const times = (value: number): string => disc.times(shownNumber(value, 0));

const ofAll: readonly FaultSlider[] = [
  { field: 'slowness', name: disc.slowness, range: [1, 40, 1], isOfLight: false, say: times },
  { field: 'boreMm', name: disc.boreShift, range: [0, 3, 0.05], isOfLight: false, say: mm },
  { field: 'daylightPercent', name: disc.daylight, range: [0, 50, 0.25], isOfLight: true, say: percent },
];
const ofOne: readonly FaultSlider[] = [
  { field: 'lampPercent', name: disc.lamp, range: [0, 100, 1], isOfLight: true, say: percent },
  { field: 'asideMm', name: disc.aside, range: [-3, 3, 0.05], isOfLight: false, say: mm },
];

/** Faults of the build, to see the misread happen. */
export function FaultSliders({ head, faults, onChange }: FaultSlidersProps) {
  const isOfLight = feelsLight(head);
  const slider = ({ field, name, range: [least, most, step], say }: FaultSlider) => (
    <Slider
      key={field}
      name={name}
      value={faults[field]}
      least={least}
      most={most}
      step={step}
      shown={say(faults[field])}
      onSlide={(value) => onChange({ ...faults, [field]: value })}
    />
  );
  const felt = (all: readonly FaultSlider[]) => all.filter((one) => isOfLight || !one.isOfLight).map(slider);
  return (
    <section class="panel fields faults">
      <h2>{disc.faults}</h2>
      {felt(ofAll)}
      {isOfLight ? null : <p class="hint">{disc.noLightFaults}</p>}
      <ChoiceField
        name={disc.faultyChannel}
        hint={disc.faultyHint}
        value={String(faults.channel)}
        choices={head.channels.map(({ channel }) => ({
          value: String(channel),
          text: disc.channel(channel),
        }))}
        onChange={(channel) => onChange({ ...faults, channel: Number(channel) })}
      />
      {felt(ofOne)}
      <button type="button" onClick={() => onChange(NO_FAULTS)}>
        {disc.mendAll}
      </button>
    </section>
  );
}
