import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { jettyDisc } from '../../../../test/support/discSpecs.ts';
import { exampleInstrument, plannedHead } from '../../../../test/support/plannedHead.ts';
import { processDefaults, type DiscSpec } from '../../disc/index.ts';
import { blankDocument } from '../pdf/blankDocument.ts';
import { discPdf } from '../pdf/discPdf.ts';
import { readBack } from './readBack.ts';

const font = readFileSync(
  new URL('../../../../node_modules/dejavu-fonts-ttf/ttf/DejaVuSans.ttf', import.meta.url),
);
const setting = { paper: 'a4', font } as const;

async function sheetsOf(disc: Partial<DiscSpec>, example = 'jetty') {
  const head = plannedHead(exampleInstrument(example, disc));
  return { plan: head.disc, content: await discPdf({ name: 'sheets', head }, setting) };
}
const found = ({ plan, content }: Awaited<ReturnType<typeof sheetsOf>>) =>
  readBack(plan, [{ path: 'disc.pdf', content }]);

describe('sheets of a disc, read back before they are written', () => {
  it.each<{ name: string; disc: Partial<DiscSpec>; example?: string }>([
    { name: 'windows cut through', disc: jettyDisc },
    { name: 'a print on film', disc: { ...jettyDisc, process: processDefaults.film, thicknessMm: 0.1 } },
    { name: 'an engraving', disc: { ...jettyDisc, form: { kind: 'relief', floorMm: 1, raised: 'light' } } },
    {
      name: 'copper that counts as light',
      disc: { ...jettyDisc, process: processDefaults.pcb, form: { kind: 'copper', copper: 'light' } },
    },
    { name: 'a disc over six sheets', disc: { ...jettyDisc, diameterMm: 308, hubDiameterMm: 120 } },
    { name: 'a strip over several sheets', disc: { ...jettyDisc, strip: { turnLengthMm: 420, leadMm: 12 } } },
    { name: 'three colours', disc: {}, example: 'tricolour' },
    {
      name: 'drawn 3 % larger for a print that shrinks',
      disc: { ...jettyDisc, drawn: { scale: 1.03, edgeLossMm: 0.1, boreAllowanceMm: 0, footGrowthMm: 0 } },
    },
  ])('show its code around the turn: $name', async ({ disc, example }) => {
    const { read, problems } = found(await sheetsOf(disc, example));
    expect(problems).toEqual([]);
    expect(read).toEqual(['disc.pdf']);
  });

  it('are refused where they show another disc, with the word read and the word wanted', async () => {
    const { content } = await sheetsOf({ ...jettyDisc, code: 'natural-binary' });
    const { plan } = await sheetsOf(jettyDisc);
    const [problem] = found({ plan, content }).problems;
    expect(problem).toMatchObject({ code: 'make/file-disagrees', where: 'disc.pdf' });
    // Both agree on 0 and 1; position 2 is 00011 in Gray and 00010 in plain counting.
    expect([problem!.got.slice(0, 10), problem!.allowed]).toEqual(['word 00010', 'word 00011']);
  });

  it('are refused where the disc has another size', async () => {
    const { content } = await sheetsOf({ ...jettyDisc, diameterMm: 90 });
    const { plan } = await sheetsOf(jettyDisc);
    expect(found({ plan, content }).problems).toHaveLength(1);
  });

  it('are refused where the bar to measure is too short, each such sheet by its number', async () => {
    const document = await blankDocument('a bar of 97 mm', setting);
    for (const length of [100, 97]) {
      document.addPage().line({ xMm: 10, yMm: 13 }, { xMm: 10 + length, yMm: 13 }, 3);
    }
    const { plan } = await sheetsOf(jettyDisc);
    const { problems } = found({ plan, content: await document.save() });
    expect(problems.map(({ where, got, allowed }) => [where, got, allowed])).toEqual([
      ['disc.pdf', 'no pattern in it', 'the pattern of the disc'],
      ['disc.pdf, sheet 2', '97 mm', '100 mm'],
    ]);
  });
});
