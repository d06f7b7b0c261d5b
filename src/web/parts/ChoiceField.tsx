import { useId } from 'preact/hooks';

interface ChoiceFieldProps {
  readonly name: string;
  readonly hint: string;
  readonly value: string;
  readonly choices: readonly { readonly value: string; readonly text: string }[];
  readonly problem?: string | undefined;
  onChange(value: string): void;
}

/** One of a few words. */
export function ChoiceField({ name, hint, value, choices, problem, onChange }: ChoiceFieldProps) {
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
      {problem === undefined ? null : (
        <p class="wrong" role="alert">
          {problem}
        </p>
      )}
      <p class="hint" id={`${id}-hint`}>
        {hint}
      </p>
    </div>
  );
}
