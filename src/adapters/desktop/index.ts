export { openInBrowser } from './openInBrowser.ts';
