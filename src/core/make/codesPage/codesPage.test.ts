import { expect, it } from 'vitest';
import { families } from '../../codes/index.ts';
import { aboutCodes } from './aboutCodes.ts';
import { codesPage } from './codesPage.ts';

it('tells of every code, in the order of the list', () => {
  expect(aboutCodes.map(({ family }) => family)).toEqual(families.map(({ name }) => name));
});

it('shows a picture for each, with a dot for every channel', () => {
  const { page, pictures } = codesPage();
  for (const { name } of pictures) expect(page, name).toContain(`pictures/codes/${name}.svg`);
  // 5 channels, the hub's hole and the disc itself
  expect(pictures[0]!.svg.match(/<circle/g)).toHaveLength(7);
});

it('computes its figures: 31 of 32 boundaries aside, natural binary is 15 positions out', () => {
  const { page } = codesPage();
  const binary = page.slice(page.indexOf('## natural binary'));
  expect(binary).toContain('| worst reading of a disc stopped on a boundary | 15 positions out |');
  expect(page.slice(page.indexOf('## reflected Gray'), page.indexOf('## long-run'))).toContain(
    '| 0 positions out |',
  );
});
