export { postgresSampleStore } from './postgresSampleStore.ts';
