import { sampleStoreContract } from '../../../test/contracts/sampleStore.ts';
import { memorySampleStore } from './memorySampleStore.ts';

sampleStoreContract('memory', async () => {
  const store = memorySampleStore();
  return { open: async () => store, end: async () => {}, lasts: false };
});
