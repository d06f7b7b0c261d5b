import { disc } from './en/disc.ts';
import { fields } from './en/fields.ts';
import { file } from './en/file.ts';
import { head } from './en/head.ts';
import { prove } from './en/prove.ts';
import { server } from './en/server.ts';
import { shell } from './en/shell.ts';
import { start } from './en/start.ts';

/** Every word that the workbench shows, by page. Another language is another object of this shape. */
export const words = { shell, server, fields, disc, head, prove, start, file } as const;
