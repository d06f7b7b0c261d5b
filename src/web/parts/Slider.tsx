import { useId } from 'preact/hooks';

interface SliderProps {
  readonly name: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly step: number;
  /** The value with its unit, in words. */
  readonly shown: string;
  onSlide(value: number): void;
}

/** A slider that says what it stands at. */
export function Slider({ name, value, least, most, step, shown, onSlide }: SliderProps) {
  const id = useId();
  return (
    <div class="slider">
      <label for={id}>{name}</label>
      <output for={id}>{shown}</output>
      <input
        id={id}
        type="range"
        min={least}
        max={most}
        step={step}
        value={value}
        aria-valuetext={shown}
        onInput={(event) => onSlide(Number(event.currentTarget.value))}
      />
    </div>
  );
}
