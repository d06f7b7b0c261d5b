/** The examples that come with the tool, all of them invented; each a folder of `examples`. */
export const exampleNames = ['jetty', 'dome', 'sluice', 'tricolour'] as const;
/** One of them. */
export type ExampleName = (typeof exampleNames)[number];
