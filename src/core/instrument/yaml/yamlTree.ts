import {
  isAlias,
  isMap,
  isScalar,
  isSeq,
  type Alias,
  type Document,
  type ParsedNode,
  type YAMLMap,
} from 'yaml';
import { VanewrightError, type Problem } from '../../error/index.ts';
import { decimalComma } from './decimalComma.ts';
import type { PlacedProblem } from './placedProblem.ts';
import type { Path, Places } from './places.ts';
import { quoted } from '../problems/words.ts';
import { MOST_DEPTH, refuseDepth } from './yamlDocument.ts';

/** Most values of a file, copies made by aliases counted each time: an as-built table of 4096 positions fits. */
const MOST_VALUES = 25_000;

/** A group of fields as written; without a prototype, so that no name is special. */
export type Fields = Record<string, unknown>;

type Node = ParsedNode | null;
type Pair = YAMLMap.Parsed['items'][number];

/** Turns the nodes of a document into plain values, and remembers where each stands. */
class TreeReader {
  readonly problems: PlacedProblem[] = [];
  /** Fields whose value is not known, since it could not be read as meant. */
  readonly unknown: Path[] = [];
  readonly #places: Places;
  readonly #anchors = new Map<string, ParsedNode>();
  /** What an alias meant where it was written, even when its name is given anew later. */
  readonly #meant = new Map<Alias, ParsedNode>();
  /** Place of the alias being copied, or `null`: what it copies is shown where the alias stands. */
  #copyOffset: number | null = null;
  #values = 0;

  constructor(places: Places) {
    this.#places = places;
  }

  read(node: Node, path: Path, keyOffset: number): unknown {
    const offset = this.#copyOffset ?? node?.range[0] ?? keyOffset;
    const isWritten = isAlias(node) || (isScalar(node) && node.value !== null);
    this.#places.set(path, { key: keyOffset, value: isWritten ? offset : keyOffset });
    this.#guard(path, offset);
    if (node === null) return null;
    if (isAlias(node)) return this.#copy(node, path, offset);
    if (node.anchor && this.#copyOffset === null) this.#anchors.set(node.anchor, node);
    if (node.tag) this.#addTagProblem(node.tag, path, offset);
    if (isMap(node)) return this.#fields(node.items, path);
    if (isSeq(node))
      return node.items.map((item, i) => this.read(item, [...path, i], this.#offsetOf(item, offset)));
    return node.value;
  }

  #offsetOf(node: Node, otherwise: number): number {
    return this.#copyOffset ?? node?.range[0] ?? otherwise;
  }

  #guard(path: Path, offset: number): void {
    if (path.length > MOST_DEPTH) refuseDepth(this.#places, offset);
    if (++this.#values <= MOST_VALUES) return;
    throw new VanewrightError({
      code: 'instrument/too-many-values',
      what: 'The file holds far more values than an instrument has; copies made by * count each time.',
      where: this.#places.at(offset),
      got: `more than ${MOST_VALUES} values`,
      allowed: `at most ${MOST_VALUES} values`,
      fix: 'Write each field once, without & and *.',
    });
  }

  /** The value an alias stands for. */
  #copy(alias: Alias, path: Path, offset: number): unknown {
    const node = this.#meant.get(alias) ?? this.#anchors.get(alias.source);
    if (!node) {
      this.unknown.push(path);
      this.#add('instrument/unknown-alias', path, offset, {
        what: 'A * copies something that has no such name.',
        got: quoted(`*${alias.source}`),
        allowed: `a name given with & earlier in the file`,
        fix: 'Write the value itself, or put the text between quotation marks.',
      });
      return null;
    }
    this.#meant.set(alias, node);
    const outer = this.#copyOffset;
    this.#copyOffset = offset;
    const value = this.read(node, path, this.#places.offsetOf(path, 'key'));
    this.#copyOffset = outer;
    return value;
  }

  #fields(pairs: readonly Pair[], path: Path): Fields {
    const fields: Fields = Object.create(null) as Fields;
    for (const [i, { key, value }] of pairs.entries()) {
      if (this.#isAfterComma(pairs, i, path)) continue;
      const offset = this.#offsetOf(key, this.#places.offsetOf(path));
      const name = isScalar(key) && key.value !== null ? String(key.value) : null;
      if (name === null || name === '<<' || name in fields) {
        this.#addNameProblem(name, path, offset);
      } else {
        fields[name] = this.read(value, [...path, name], offset);
      }
    }
    return fields;
  }

  /** Whether a field is but the figures after a decimal comma; the number before it is told, and not known. */
  #isAfterComma(pairs: readonly Pair[], i: number, path: Path): boolean {
    const whole = pairs[i - 1];
    if (!whole || !isScalar(whole.key)) return false;
    const name = String(whole.key.value);
    const problem = decimalComma(name, whole, pairs[i]!);
    if (!problem) return false;
    const { code, ...answers } = problem;
    this.unknown.push([...path, name]);
    this.#add(code, [...path, name], this.#offsetOf(whole.value, this.#places.offsetOf(path)), answers);
    return true;
  }

  #addNameProblem(name: string | null, path: Path, offset: number): void {
    if (name === null || name === '<<') {
      this.#add('instrument/odd-name', path, offset, {
        what:
          name === null
            ? 'A field has no plain name.'
            : 'The << sign, which merges groups, is not used here.',
        got: name ?? 'a list, a group, a copy or nothing where a name should be',
        allowed: 'a name, a colon, a space and a value',
        fix: 'Write each field as `name: value`.',
      });
      return;
    }
    const first = this.#places.at(this.#places.offsetOf([...path, name], 'key'));
    this.#add('instrument/duplicate-field', [...path, name], offset, {
      what: 'The same field is written twice.',
      got: `${quoted(name)} again; first at ${first}`,
      allowed: 'each field once',
      fix: 'Remove one of the two.',
    });
  }

  #addTagProblem(tag: string, path: Path, offset: number): void {
    this.unknown.push(path);
    this.#add('instrument/yaml-tag', path, offset, {
      what: 'A value begins with a ! tag, which an instrument file does not use.',
      got: quoted(tag),
      allowed: 'a plain value',
      fix: 'Remove the tag, or put the text between quotation marks.',
    });
  }

  #add(code: string, path: Path, offset: number, problem: Omit<Problem, 'code' | 'where'>): void {
    const where = this.#places.shown(offset, path);
    this.problems.push({ offset, problem: { code, where, ...problem } });
  }
}

/** A document as plain values. */
export interface YamlTree {
  readonly value: unknown;
  readonly problems: readonly PlacedProblem[];
  /** Fields among those problems whose value is not known. */
  readonly unknown: readonly Path[];
}

/** What the document says as plain values; problems of single fields are given beside it. */
export function yamlTree(document: Document.Parsed<ParsedNode>, places: Places): YamlTree {
  const reader = new TreeReader(places);
  const contents = document.contents as Node;
  const value = reader.read(contents, [], contents?.range[0] ?? 0);
  return { value, problems: reader.problems, unknown: reader.unknown };
}
