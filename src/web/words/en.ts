import { disc } from './en/disc.ts';
import { explain } from './en/explain.ts';
import { fields } from './en/fields.ts';
import { file } from './en/file.ts';
import { fit } from './en/fit.ts';
import { head } from './en/head.ts';
import { log } from './en/log.ts';
import { make } from './en/make.ts';
import { prove } from './en/prove.ts';
import { review } from './en/review.ts';
import { server } from './en/server.ts';
import { shell } from './en/shell.ts';
import { start } from './en/start.ts';
import { weigh } from './en/weigh.ts';
import { turn } from './en/turn.ts';

/** Every word that the workbench shows, by page. Another language is another object of this shape. */
export const words = {
  shell,
  server,
  fields,
  weigh,
  disc,
  head,
  prove,
  make,
  fit,
  start,
  file,
  log,
  review,
  turn,
  explain,
} as const;
