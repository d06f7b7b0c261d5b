import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvText, element, escapeText, joined, table } from './index.ts';

describe('element', () => {
  it('makes hostile text inert in content and attributes', () => {
    const { html } = element('p', { title: '"><script>' }, '<script>alert(1)</script>');
    expect(html).not.toContain('<script>');
    expect(html.match(/</g)).toHaveLength(2);
  });

  it('leaves out an attribute of null and rounds numbers to four decimals', () => {
    expect(element('circle', { r: 1 / 3, id: null }).html).toBe('<circle r="0.3333"/>');
  });

  it('keeps markup as it is', () => {
    expect(joined(['<', element('b', {}, 'x')]).html).toBe('&#60;<b>x</b>');
  });
});

it('takes characters that XML forbids out of any text', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      expect(escapeText(text)).not.toMatch(/[\u0000-\u0008\u000B\u000C\u000E-\u001F<>"']/);
    }),
    { seed: 20261125 },
  );
});

it('lays out a table with one heading a column', () => {
  expect(table(['a'], [['<']]).html).toBe(
    '<table><thead><tr><th scope="col">a</th></tr></thead><tbody><tr><td>&#60;</td></tr></tbody></table>',
  );
});

describe('csvText', () => {
  it('quotes what needs it and ends lines with CRLF', () => {
    expect(csvText(['a', 'b'], [['1,5', 'say "x"']])).toBe('a,b\r\n"1,5","say ""x"""\r\n');
  });

  it('keeps a cell from acting as a spreadsheet formula, and leaves numbers alone', () => {
    expect(csvText(['=1+1', '-4.5'], [])).toBe("'=1+1,-4.5\r\n");
  });
});
