export { discStl } from './stl/discStl.ts';
export { discSvg } from './svg/discSvg.ts';
