import { useId } from 'preact/hooks';

interface CheckFieldProps {
  readonly name: string;
  readonly hint: string;
  readonly value: boolean;
  onChange(value: boolean): void;
}

/** Yes or no. */
export function CheckField({ name, hint, value, onChange }: CheckFieldProps) {
  const id = useId();
  return (
    <div class="field">
      <label class="row" for={id}>
        <input
          id={id}
          type="checkbox"
          checked={value}
          aria-describedby={`${id}-hint`}
          onChange={(event) => onChange(event.currentTarget.checked)}
        />
        {name}
      </label>
      <p class="hint" id={`${id}-hint`}>
        {hint}
      </p>
    </div>
  );
}
