import { inflateSync, strFromU8 } from 'fflate';

/** One file of a zip, unpacked. */
export interface ZipEntry {
  readonly path: string;
  readonly bytes: Uint8Array;
  /** True where length and check value are those of the directory. */
  readonly isWhole: boolean;
}

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value;
});

/** Check value of bytes as zips keep it. @source ISO 3309, the 32-bit check. */
function crc32(bytes: Uint8Array): number {
  let value = 0xffffffff;
  for (const byte of bytes) value = CRC_TABLE[(value ^ byte) & 255]! ^ (value >>> 8);
  return (value ^ 0xffffffff) >>> 0;
}

/**
 * Files of a zip by its directory at the end, in order.
 *
 * @returns n ≥ 0; none where the bytes are no zip.
 * @source APPNOTE.TXT, .ZIP File Format Specification 6.3, sections 4.3.7, 4.3.12 and 4.3.16.
 * @check src/core/make/readBack/readBundle.test.ts
 */
export function readZip(bytes: Uint8Array): ZipEntry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let end = bytes.length - 22;
  while (end >= 0 && view.getUint32(end, true) !== 0x06054b50) end--;
  if (end < 0) return [];
  let at = view.getUint32(end + 16, true);
  return Array.from({ length: view.getUint16(end + 10, true) }, () => {
    const [method, check, packed, length] = [
      view.getUint16(at + 10, true),
      view.getUint32(at + 16, true),
      view.getUint32(at + 20, true),
      view.getUint32(at + 24, true),
    ];
    const nameLength = view.getUint16(at + 28, true);
    const path = strFromU8(bytes.subarray(at + 46, at + 46 + nameLength));
    const local = view.getUint32(at + 42, true);
    const from = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
    const stored = bytes.subarray(from, from + packed);
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    const unpacked = method === 0 ? stored : inflated(stored);
    return { path, bytes: unpacked, isWhole: unpacked.length === length && crc32(unpacked) === check };
  });
}

/** Nothing where the bytes cannot be unpacked: the check value tells. */
function inflated(packed: Uint8Array): Uint8Array {
  try {
    return inflateSync(packed);
  } catch {
    return new Uint8Array();
  }
}
