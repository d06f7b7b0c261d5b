export { memorySampleStore } from './memorySampleStore.ts';
