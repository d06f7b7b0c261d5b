export { partsList, type PartRow } from './parts.ts';
export { programFor, type Program } from './program.ts';
export { programProblems } from './facts.ts';
export { wiringPlan, wiringProblems, type Wire, type WiringPlan } from './wiring.ts';
export { packedWord, wordTableFor, type WordTable } from './wordTable.ts';
