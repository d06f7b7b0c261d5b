export { csvText } from './csv.ts';
export { look } from './look.ts';
export { element, escapeText, joined, type Attribute, type Markup } from './markup.ts';
export { label, picture, polyline, type PictureFrame } from './picture.ts';
export { table } from './table.ts';
export { bottomAxis, leftAxis, plotFrame, ticksBetween, type PlotBox } from './charts/axis.ts';
export { barPicture, type Bar } from './charts/barPicture.ts';
export { histogramPicture, type HistogramFacts } from './charts/histogramPicture.ts';
export { turnErrorPicture } from './charts/turnErrorPicture.ts';
