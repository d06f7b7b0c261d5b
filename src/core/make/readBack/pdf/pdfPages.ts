import { strFromU8, unzlibSync } from 'fflate';
import { PdfWalk, type PdfDict, type PdfValue } from './pdfValues.ts';

/** One page: its size and what is drawn on it, as operators. [points] */
export interface PdfPage {
  readonly widthPt: number;
  readonly heightPt: number;
  readonly content: string;
}

interface PdfObject {
  readonly value: PdfValue;
  /** What a stream holds, as it lies in the file. */
  readonly stream: Uint8Array | null;
}

type Objects = Map<number, PdfObject>;

const isDict = (value: PdfValue | null | undefined): value is PdfDict => value instanceof Map;

function streamText({ value, stream }: PdfObject): string {
  if (!stream || !isDict(value)) return '';
  try {
    return strFromU8(value.get('/Filter') === '/FlateDecode' ? unzlibSync(stream) : stream, true);
  } catch {
    // What cannot be unpacked shows nothing, and that is what is told of the file.
    return '';
  }
}

/** Objects that lie packed in a stream. @source ISO 32000-1, 7.5.7 */
function packedObjects(packed: PdfObject): [number, PdfObject][] {
  const dict = packed.value as PdfDict;
  const [count, first] = [Number(dict.get('/N')), Number(dict.get('/First'))];
  const text = streamText(packed);
  const head = new PdfWalk(text);
  return Array.from({ length: count }, () => {
    const [number, at] = [Number(head.next()), Number(head.next())];
    return [number, { value: new PdfWalk(text, first + at).next() ?? '', stream: null }];
  });
}

/** Every object of a file, one after the other as they are written. @source ISO 32000-1, 7.3.10 */
function objectsOf(bytes: Uint8Array): Objects {
  const walk = new PdfWalk(strFromU8(bytes, true));
  const objects: Objects = new Map();
  for (;;) {
    const head = walk.take(/(?:[\s\0]|%[^\r\n]*)*(\d+)\s+\d+\s+obj\b/y);
    if (!head) return objects;
    const value = walk.next() ?? '';
    let stream: Uint8Array | null = null;
    if (isDict(value) && walk.take(/\s*stream\r?\n/y)) {
      const length = Number(value.get('/Length'));
      stream = bytes.subarray(walk.at, walk.at + length);
      walk.at += length;
      walk.take(/\s*endstream/y);
    }
    walk.take(/\s*endobj/y);
    objects.set(Number(head[1]), { value, stream });
    if (isDict(value) && value.get('/Type') === '/ObjStm') {
      for (const [number, object] of packedObjects({ value, stream })) objects.set(number, object);
    }
  }
}

/**
 * Pages of a PDF in the order in which they are printed.
 *
 * @returns n ≥ 0; none where the bytes are no PDF.
 * @source ISO 32000-1, 7.7.3 (page tree)
 */
export function readPdfPages(bytes: Uint8Array): PdfPage[] {
  const objects = objectsOf(bytes);
  const objectOf = (value: PdfValue | undefined): PdfObject | null => {
    if (value === undefined) return null;
    if (typeof value === 'object' && 'ref' in value) return objects.get(value.ref) ?? null;
    return { value, stream: null };
  };
  const pagesBelow = (node: PdfValue | undefined, inherited: PdfValue | undefined): PdfPage[] => {
    const dict = objectOf(node)?.value;
    if (!isDict(dict)) return [];
    const box = dict.get('/MediaBox') ?? inherited;
    const kids = objectOf(dict.get('/Kids'))?.value;
    if (Array.isArray(kids)) return kids.flatMap((kid: PdfValue) => pagesBelow(kid, box));
    const contents = objectOf(dict.get('/Contents'));
    const streams = Array.isArray(contents?.value) ? contents.value.map(objectOf) : [contents];
    const [left, low, right, high] = (objectOf(box)?.value ?? []) as readonly number[];
    const content = streams.map((each) => (each ? streamText(each) : '')).join('\n');
    return [{ widthPt: right! - left!, heightPt: high! - low!, content }];
  };
  const catalog = [...objects.values()].find(
    ({ value }) => isDict(value) && value.get('/Type') === '/Catalog',
  );
  return catalog ? pagesBelow((catalog.value as PdfDict).get('/Pages'), undefined) : [];
}
