// The verbs that the command line, the server and the screen share.
export {
  DEFAULT_BUILDS,
  DEFAULT_SEED,
  proveInstrument,
  type ProvedDesign,
  type ProveRequest,
} from './proveInstrument.ts';
export { makeInstrument, type MadeDesign, type MakeRequest } from './makeInstrument.ts';
export { INSTRUMENT_FILE, newInstrument } from './newInstrument.ts';
