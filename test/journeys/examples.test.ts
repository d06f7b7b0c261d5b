import { expect, it } from 'vitest';
import { examples, testExamples } from '../support/exampleJob.ts';

it('are the four that the docs tell of', () => {
  expect(examples).toEqual(['dome', 'jetty', 'sluice', 'tricolour']);
});

// The whole job of one example takes long: the other two go beside these.
testExamples(examples.slice(0, 2));
