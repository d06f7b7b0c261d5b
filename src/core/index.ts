// The library's front door; each step is reached through its own index.
export {
  buildCode,
  codeTable,
  families,
  familyNames,
  wordAt,
  type CodeTable,
  type Word,
} from './codes/index.ts';
export { problemText, VanewrightError, type Problem } from './error/index.ts';
