export { CAUTIONS_DEFER, cautionsFor, lineClearanceM, type Caution } from './cautions.ts';
export { makeParts, partNames, type MadeFile, type MakePart } from './parts.ts';
export { discPicture } from './pictures/discPicture.ts';
export { dividerPicture } from './pictures/dividerPicture.ts';
export { signalPicture } from './pictures/signalPicture.ts';
export { wordMap } from './pictures/wordMap.ts';
export { buildSheet, type ProvedParts } from './sheet/sheet.ts';
export { discStl } from './stl/discStl.ts';
export { discSvg } from './svg/discSvg.ts';
