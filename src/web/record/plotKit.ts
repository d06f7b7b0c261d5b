import uPlot from 'uplot';

/** What draws series; in a file of its own, so that it is fetched only with them. */
export const plotKit = uPlot;
