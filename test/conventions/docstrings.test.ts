import { existsSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { ROOT, sourcePaths, textOf } from '../support/sourceFiles.ts';

interface Export {
  readonly place: string;
  readonly doc: string;
  readonly isQuantity: boolean;
}

const NUMBER = /\b(number|Degrees)\b/;

function docOf(node: ts.Node, source: ts.SourceFile): string {
  const ranges = ts.getLeadingCommentRanges(source.text, node.getFullStart()) ?? [];
  return ranges
    .map(({ pos, end }) => source.text.slice(pos, end))
    .filter((text) => text.startsWith('/**'))
    .join('\n');
}

/** Exported functions and constants of a file; a function that takes or gives a number deals in quantities. */
function exportsOf(path: string): Export[] {
  const source = ts.createSourceFile(path, textOf(path), ts.ScriptTarget.Latest, true);
  const found: Export[] = [];
  for (const node of source.statements) {
    const isExported =
      ts.canHaveModifiers(node) && ts.getModifiers(node)?.some((m) => m.kind === ts.SyntaxKind.ExportKeyword);
    if (!isExported || ts.isExportDeclaration(node)) continue;
    const name =
      (node as { name?: ts.Identifier }).name?.text ??
      source.text.slice(node.getStart(), node.getStart() + 40);
    const signature = ts.isFunctionDeclaration(node)
      ? [...node.parameters.map((p) => p.type), node.type].map((type) => type?.getText() ?? '').join(' ')
      : '';
    found.push({ place: `${path} ${name}`, doc: docOf(node, source), isQuantity: NUMBER.test(signature) });
  }
  return found;
}

/** Names that leave a step through its index.ts; the rest is the step's own business. */
function publicNames(step: string): Set<string> {
  const names = [...textOf(`src/core/${step}/index.ts`).matchAll(/\{([^}]*)\}/g)].flatMap(([, list]) =>
    list!.split(','),
  );
  return new Set(names.map((name) => name.trim().replace(/^type /, '')).filter(Boolean));
}

const steps = [...new Set(sourcePaths('src/core').map((path) => path.split('/')[2]!))].filter(
  (step) => !step.includes('.'),
);
const all = steps.flatMap((step) => {
  const names = publicNames(step);
  return sourcePaths(`src/core/${step}`)
    .flatMap(exportsOf)
    .filter(({ place }) => names.has(place.split(' ')[1]!));
});

describe('what leaves a step of core', () => {
  it('are found at all', () => {
    expect(all.length).toBeGreaterThan(50);
  });

  it('each say what they are', () => {
    expect(all.filter(({ doc }) => doc === '').map(({ place }) => place)).toEqual([]);
  });

  it('name a unit where they take or give a quantity', () => {
    expect(
      all.filter(({ isQuantity, doc }) => isQuantity && !/\[[^\]]+\]/.test(doc)).map(({ place }) => place),
    ).toEqual([]);
  });

  it('point at checks that exist', () => {
    const paths = all.flatMap(({ place, doc }) =>
      [...doc.matchAll(/@check\s+((?:test|src)\/[\w./-]+)/g)].map(([, path]) => ({ place, path: path! })),
    );
    const gone = paths.filter(
      ({ path }) => ![path, `${path}.test.ts`].some((p) => existsSync(join(ROOT, p))),
    );
    expect(gone).toEqual([]);
  });
});
