export { netlist, netlistText, type CircuitPart, type Net, type Netlist } from './schematic/netlist.ts';
export { partsList, type PartRow } from './wiring/parts.ts';
export { programFiles, programFor, type Program, type ProgramFile } from './program.ts';
export { programProblems } from './programProblems.ts';
export { wiringPlan, type Wire, type WiringPlan } from './wiring/wiring.ts';
export { wiringProblems } from './wiring/wiringProblems.ts';
export { packedWord, wordTableFor, type WordTable } from './wordTable.ts';
export { powerPlan, powerShortfalls, type PowerPlan, type PowerShare } from './power/powerPlan.ts';
export { schematicPicture } from './schematic/schematicPicture.ts';
