export { duckdbSampleStore, type DuckdbSampleStore } from './duckdbSampleStore.ts';
export { duckdbArchive } from './duckdbArchive.ts';
