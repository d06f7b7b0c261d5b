import { isScalar, type ParsedNode } from 'yaml';
import type { Problem } from '../../error/index.ts';

/** A field as it stands between braces. */
interface Pair {
  readonly key: ParsedNode;
  readonly value: ParsedNode | null;
}

/** What stands behind the comma of `84,5` or `84,5 mm`, which YAML takes for a field without a value. */
const AFTER_COMMA = /^(\d+)(?:\s.*)?$/;
const WHOLE = /^[+-]?\d+$/;

/** How a scalar is written; `null` for anything else. */
function sourceOf(node: ParsedNode | null): string | null {
  return isScalar(node) ? (node.source ?? null) : null;
}

/**
 * A number with a decimal comma between braces, where the comma ends the value.
 *
 * @param name - Field the number was written for.
 * @param whole - That field's pair, which YAML gives the figures before the comma.
 * @param rest - The pair after it.
 * @returns The problem, or `null` when the two are what they look like.
 */
export function decimalComma(name: string, whole: Pair, rest: Pair): Omit<Problem, 'where'> | null {
  const before = sourceOf(whole.value);
  const after = AFTER_COMMA.exec(sourceOf(rest.key) ?? '')?.[1];
  const isEmpty = rest.value === null || (isScalar(rest.value) && rest.value.value === null);
  if (before === null || !WHOLE.test(before) || after === undefined || !isEmpty) return null;
  const thousands = after.length === 3 ? `, or ${before}${after} for thousands` : '';
  return {
    code: 'instrument/not-a-number',
    what: `Between braces a comma ends the value, so ${name} is read as ${before}, and the rest as a field.`,
    got: `${before},${after}`,
    allowed: 'a number with a decimal point',
    fix: `Write ${name}: ${before}.${after} (the decimal sign is a point)${thousands}.`,
  };
}
