import { examples, testExamples } from '../support/exampleJob.ts';

testExamples(examples.slice(2));
