export { discSvg } from './svg/discSvg.ts';
