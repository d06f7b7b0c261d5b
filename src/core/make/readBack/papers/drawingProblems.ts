import type { Problem } from '../../../error/index.ts';
import { showMm } from '../../../units/index.ts';
import type { MadeFile } from '../../madeFile.ts';
import { disagreement } from '../disagreement.ts';

const TAG = /<(\/?)([A-Za-z][\w:-]*)((?:\s+[\w:-]+="[^"<]*")*)\s*(\/?)>|<\?[^>]*\?>|<!--.*?-->|([^<]+)|(<)/gs;

/** First place of a drawing that is no sound XML, or `null`. @source W3C, Extensible Markup Language 1.0, section 2.1 */
function faultIn(text: string): string | null {
  const open: string[] = [];
  let roots = 0;
  for (const [whole, close, name, , empty, words, lost] of text.matchAll(TAG)) {
    if (lost) return 'a sign < that begins no tag';
    if (words !== undefined) {
      if (/&(?!(amp|lt|gt|quot|apos|#\d+|#x[\dA-Fa-f]+);)/.test(words)) return 'a bare sign &';
      if (open.length === 0 && words.trim()) return 'text outside the drawing';
    } else if (close) {
      if (open.pop() !== name) return `${whole} that closes nothing`;
    } else if (name) {
      if (open.length === 0) roots++;
      if (!empty) open.push(name);
    }
  }
  if (open.length > 0) return `<${open.at(-1)}> that is not closed`;
  return roots === 1 ? null : `${roots} roots`;
}

/** True size of a drawing: its width and height in millimetres are those of its own numbers. */
function sizeFault(text: string): { got: string; allowed: string } | null {
  const root = /<svg[^>]*>/.exec(text)?.[0] ?? '';
  const size = /\swidth="([\d.]+)mm" height="([\d.]+)mm"/.exec(root)?.slice(1).map(Number);
  const box = /viewBox="([^"]*)"/.exec(root)?.[1]!.split(' ').map(Number);
  if (!size) return null;
  const off = [0, 1].find((axis) => Math.abs(size[axis]! - (box?.[axis + 2] ?? 0)) > 1e-3);
  if (off === undefined) return null;
  return { got: showMm(size[off]!), allowed: showMm(box?.[off + 2] ?? 0) };
}

/**
 * Drawings that a viewer would refuse, or print in another size.
 *
 * @param files - A whole result; others are passed over.
 * @check src/core/make/readBack/readBundle.test.ts
 */
export function drawingProblems(files: readonly MadeFile[]): Problem[] {
  return files.flatMap(({ path, content }): Problem[] => {
    if (!path.endsWith('.svg') || typeof content !== 'string') return [];
    const fault = faultIn(content);
    if (fault) return [disagreement(path, 'A drawing was read back and is not sound.', fault, 'sound XML')];
    const size = sizeFault(content);
    const what = 'A drawing was read back and would not print at its true size.';
    return size ? [disagreement(path, what, size.got, size.allowed)] : [];
  });
}
