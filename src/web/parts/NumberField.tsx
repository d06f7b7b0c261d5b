import { useEffect, useId, useState } from 'preact/hooks';
import type { FieldSchema } from '../../core/instrument/index.ts';
import { words } from '../words/en.ts';
import { readNumber, typedNumber } from './numbers.ts';
import { complaint, rangeText } from './schemaField.ts';

interface NumberFieldProps {
  readonly name: string;
  readonly schema: FieldSchema;
  readonly value: number;
  /** What else is wrong with the value, from reading the whole file. */
  readonly problem?: string | undefined;
  onChange(value: number): void;
}

/** One number of the file: its unit, its range, and what is wrong as one types. */
export function NumberField({ name, schema, value, problem, onChange }: NumberFieldProps) {
  const id = useId();
  const [text, setText] = useState(() => typedNumber(value));
  const [isTyping, setTyping] = useState(false);
  useEffect(() => {
    if (!isTyping) setText(typedNumber(value));
  }, [value, isTyping]);
  const wrong = complaint(text, schema) ?? (isTyping ? undefined : problem) ?? null;
  const range = rangeText(schema);
  const type = (typed: string): void => {
    setText(typed);
    if (complaint(typed, schema) === null) onChange(readNumber(typed)!);
  };
  const step = (by: number): void => {
    const now = readNumber(text) ?? value;
    type(typedNumber(Number((now + by).toFixed(6))));
  };
  return (
    <div class="field">
      <label for={id}>{name}</label>
      <div class="row">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autocomplete="off"
          value={text}
          aria-invalid={wrong !== null}
          aria-describedby={`${id}-hint${wrong === null ? '' : ` ${id}-wrong`}`}
          onFocus={() => setTyping(true)}
          onBlur={() => setTyping(false)}
          onInput={(event) => type(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
            event.preventDefault();
            step((event.key === 'ArrowUp' ? 1 : -1) * stepOf(schema));
          }}
        />
        {schema.unit && schema.unit !== '-' ? <span class="unit">{schema.unit}</span> : null}
      </div>
      {wrong === null ? null : (
        <p class="wrong" id={`${id}-wrong`} role="alert">
          {wrong}
        </p>
      )}
      <p class="hint" id={`${id}-hint`}>
        {schema.description}
        {range === '' ? '' : ` ${words.fields.outside(range)}`}
      </p>
    </div>
  );
}

/** What an arrow key adds: one of a whole number, a tenth of others, less where the range is small. */
function stepOf({ type, minimum = 0, maximum = 100 }: FieldSchema): number {
  if ([type ?? []].flat().includes('integer')) return 1;
  return maximum - minimum <= 2 ? 0.01 : 0.1;
}
