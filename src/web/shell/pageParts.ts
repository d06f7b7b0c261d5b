import type { Remote } from 'comlink';
import type { FieldSchema } from '../../core/instrument/index.ts';
import type { Background } from '../engine/background.ts';
import type { Engine } from '../engine/engine.ts';
import type { OpenProject } from '../project/project.ts';

/** What every page is given. */
export interface PageParts {
  readonly engine: Remote<Engine>;
  /** The same library for work that takes long, in a worker of its own. */
  readonly background: Background;
  readonly project: OpenProject;
  /** What each field of the file may be. */
  readonly schema: FieldSchema;
}
