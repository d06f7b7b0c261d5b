export { nodeBuildWorkers } from './nodeBuildWorkers.ts';
