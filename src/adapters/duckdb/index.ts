export { duckdbSampleStore, type DuckdbSampleStore } from './duckdbSampleStore.ts';
