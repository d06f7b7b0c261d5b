export { postgresSampleStore } from './postgresSampleStore.ts';
export { postgresFeeds } from './postgresFeeds.ts';
