import { expose } from 'comlink';
import { engine } from './engine.ts';

expose(engine);
