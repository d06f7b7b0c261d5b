export { BrokenPromise, problemText, throwIfAny, VanewrightError, type Problem } from './problem.ts';
