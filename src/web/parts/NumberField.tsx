import { useEffect, useId, useState } from 'preact/hooks';
import type { FieldSchema } from '../../core/instrument/index.ts';
import { words } from '../words/en.ts';
import { readNumber, typedNumber } from './numbers.ts';
import { complaint, isOptional, rangeText, ruleText } from './schemaField.ts';

interface NumberFieldProps {
  readonly name: string;
  readonly schema: FieldSchema;
  /** `null` where the field is left to its default. */
  readonly value: number | null;
  /** What the default comes to, shown while the field is empty. */
  readonly standsFor?: number | undefined;
  /** What else is wrong with the value, from reading the whole file. */
  readonly problem?: string | undefined;
  onChange(value: number | null): void;
}

/** One number of the file: its unit, its range, and what is wrong as one types. */
export function NumberField({ name, schema, value, standsFor, problem, onChange }: NumberFieldProps) {
  const id = useId();
  const shown = value === null ? '' : typedNumber(value);
  const [text, setText] = useState(shown);
  const [isTyping, setTyping] = useState(false);
  useEffect(() => {
    if (!isTyping) setText(shown);
  }, [shown, isTyping]);
  const mayBeEmpty = isOptional(schema);
  const against = (typed: string): string | null =>
    typed.trim() === '' && mayBeEmpty ? null : complaint(typed, schema);
  const wrong = against(text) ?? problem ?? null;
  const range = rangeText(schema);
  const type = (typed: string): void => {
    setText(typed);
    if (against(typed) === null) onChange(readNumber(typed));
  };
  const step = (by: number): void => {
    const now = readNumber(text) ?? value ?? standsFor ?? schema.minimum ?? 0;
    type(typedNumber(Number((now + by).toFixed(6))));
  };
  const rule = ruleText(schema);
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
          placeholder={standsFor === undefined ? undefined : typedNumber(Number(standsFor.toPrecision(4)))}
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
        {mayBeEmpty && rule !== '' ? ` ${words.fields.byDefault(rule)}` : ''}
      </p>
    </div>
  );
}

/** What an arrow key adds: one of a whole number, a tenth of others, less where the range is small. */
function stepOf({ type, minimum = 0, maximum = 100 }: FieldSchema): number {
  if ([type ?? []].flat().includes('integer')) return 1;
  return maximum - minimum <= 2 ? 0.01 : 0.1;
}
