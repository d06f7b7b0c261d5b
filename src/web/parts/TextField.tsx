import { useEffect, useId, useState } from 'preact/hooks';
import type { FieldSchema } from '../../core/instrument/index.ts';
import { words } from '../words/en.ts';

interface TextFieldProps {
  readonly name: string;
  readonly schema: FieldSchema;
  readonly value: string;
  readonly problem?: string | undefined;
  onChange(value: string): void;
}

/** One line of text of the file. */
export function TextField({ name, schema, value, problem, onChange }: TextFieldProps) {
  const id = useId();
  const [text, setText] = useState(value);
  const [isTyping, setTyping] = useState(false);
  useEffect(() => {
    if (!isTyping) setText(value);
  }, [value, isTyping]);
  const { maxLength = Infinity } = schema;
  const against = (typed: string): string | null => {
    if (typed.trim() === '') return words.fields.empty;
    return typed.length > maxLength ? words.fields.tooLong(maxLength) : null;
  };
  const wrong = against(text) ?? problem ?? null;
  return (
    <div class="field">
      <label for={id}>{name}</label>
      <div class="row">
        <input
          id={id}
          class="wide"
          type="text"
          autocomplete="off"
          value={text}
          aria-invalid={wrong !== null}
          aria-describedby={`${id}-hint`}
          onFocus={() => setTyping(true)}
          onBlur={() => setTyping(false)}
          onInput={({ currentTarget }) => {
            setText(currentTarget.value);
            if (against(currentTarget.value) === null) onChange(currentTarget.value);
          }}
        />
      </div>
      {wrong === null ? null : (
        <p class="wrong" role="alert">
          {wrong}
        </p>
      )}
      <p class="hint" id={`${id}-hint`}>
        {schema.description}
      </p>
    </div>
  );
}
