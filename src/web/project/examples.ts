import dome from '../../../examples/dome/instrument.yaml?raw';
import jetty from '../../../examples/jetty/instrument.yaml?raw';
import sluice from '../../../examples/sluice/instrument.yaml?raw';
import tricolour from '../../../examples/tricolour/instrument.yaml?raw';

/** Instrument files to open and to learn from; all of them invented. */
export const examples = { jetty, dome, sluice, tricolour } as const;

/** Name of an example. */
export type ExampleName = keyof typeof examples;
