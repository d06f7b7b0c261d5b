import { useEffect, useId, useState } from 'preact/hooks';
import type { FieldSchema } from '../../core/instrument/index.ts';
import { words } from '../words/en.ts';
import { listText, readList, type ListValue } from './listText.ts';
import { isOptional, ruleText } from './schemaField.ts';

interface ListFieldProps {
  readonly name: string;
  readonly schema: FieldSchema;
  readonly value: unknown;
  readonly problem?: string | undefined;
  onChange(value: ListValue | undefined): void;
}

/** A list of the file on one line. */
export function ListField({ name, schema, value, problem, onChange }: ListFieldProps) {
  const id = useId();
  const shown = listText(value);
  const [text, setText] = useState(shown);
  const [isTyping, setTyping] = useState(false);
  useEffect(() => {
    if (!isTyping) setText(shown);
  }, [shown, isTyping]);
  const mayBeEmpty = isOptional(schema);
  const isEmpty = text.trim() === '';
  const list = readList(text, schema);
  const isWrong = list === null && !(isEmpty && mayBeEmpty);
  const wrong = isWrong ? words.fields.noList(listText(schema.examples?.[0])) : (problem ?? null);
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
            const typed = readList(currentTarget.value, schema);
            if (typed !== null) onChange(typed);
            else if (currentTarget.value.trim() === '' && mayBeEmpty) onChange(undefined);
          }}
        />
        {schema.unit ? <span class="unit">{schema.unit}</span> : null}
      </div>
      {wrong === null ? null : (
        <p class="wrong" role="alert">
          {wrong}
        </p>
      )}
      <p class="hint" id={`${id}-hint`}>
        {schema.description}
        {mayBeEmpty && ruleText(schema) !== '' ? ` ${words.fields.byDefault(ruleText(schema))}` : ''}
      </p>
    </div>
  );
}
