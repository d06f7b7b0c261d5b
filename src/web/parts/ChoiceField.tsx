import { useId } from 'preact/hooks';

interface ChoiceFieldProps {
  readonly name: string;
  readonly hint: string;
  readonly value: string;
  readonly choices: readonly { readonly value: string; readonly text: string }[];
  onChange(value: string): void;
}

/** One of a few words. */
export function ChoiceField({ name, hint, value, choices, onChange }: ChoiceFieldProps) {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{name}</label>
      <div class="row">
        <select
          id={id}
          value={value}
          aria-describedby={`${id}-hint`}
          onChange={(event) => onChange(event.currentTarget.value)}
        >
          {choices.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.text}
            </option>
          ))}
        </select>
      </div>
      <p class="hint" id={`${id}-hint`}>
        {hint}
      </p>
    </div>
  );
}
