import { expect, it } from 'vitest';
import { recordingText, textLines } from './textLines.ts';

it('decodes what serial monitors and spreadsheets save', () => {
  const text = 'ms;a0\n0;1\nµ';
  expect(recordingText(new TextEncoder().encode(text))).toBe(text);
  expect(recordingText(Buffer.from(`\ufeff${text}`, 'utf16le'))).toBe(`\ufeff${text}`);
  expect(recordingText(Buffer.from(`\ufeff${text}`, 'utf16le').swap16())).toBe(`\ufeff${text}`);
});

it('keeps the good lines after rubbish that is no text at all', () => {
  const bytes = Uint8Array.from([0xff, 0xfe, 0x80, 0x7e, 10, ...new TextEncoder().encode('0,1,2\n')]);
  expect(recordingText(bytes).split('\n')[1]).toBe('0,1,2');
});

it('lists the marks and empty bytes it leaves out', () => {
  const { lines, repairs } = textLines({ name: 'x', text: '\ufeff1,2\r3,4\r\n\0\0\0' });
  expect(lines.map(({ text }) => text)).toEqual(['1,2', '3,4']);
  expect(repairs.map(({ kind }) => kind)).toEqual(['byte-order-mark', 'empty-bytes']);
});
