import type { FastifyInstance, FastifyRequest } from 'fastify';
import { VanewrightError } from '../core/error/index.ts';
import { INSTRUMENT_FILE_MOST_BYTES } from '../core/instrument/index.ts';
import type { ProjectFolder } from '../ports/index.ts';
import {
  filesSchema,
  projectSchema,
  readFileSchema,
  versionSchema,
  writeFileSchema,
} from './projectSchemas.ts';

/** The project that is served. */
export interface ServedProject {
  readonly folder: ProjectFolder;
  /** Path of the instrument file below the folder. */
  readonly path: string;
}

/** Longest recording. [byte] */
const FILE_MOST_BYTES = 64 * 1024 * 1024;
/** Small files go with the project at once, such as a list of words; larger ones are asked for one by one. [byte] */
const BESIDE_MOST_BYTES = 256 * 1024;
const BESIDE_ALL_BYTES = 4 * 1024 * 1024;
const BESIDE_KINDS = /\.(ya?ml|json|csv|tsv|txt)$/i;

const decoder = new TextDecoder('utf-8', { fatal: true });

/** Text of UTF-8 bytes; `null` where they are none. */
function textOf(bytes: Uint8Array): string | null {
  try {
    return decoder.decode(bytes);
  } catch {
    return null;
  }
}

async function besideTexts({ folder, path }: ServedProject): Promise<Record<string, string>> {
  const texts: Record<string, string> = {};
  let left = BESIDE_ALL_BYTES;
  for (const file of (await folder.list()).files) {
    const isWanted = file.path !== path && BESIDE_KINDS.test(file.path);
    if (!isWanted || file.bytes > Math.min(left, BESIDE_MOST_BYTES)) continue;
    const found = await folder.read(file.path, BESIDE_MOST_BYTES).catch(() => null);
    const text = found && textOf(found.bytes);
    if (text === null) continue;
    left -= file.bytes;
    texts[file.path] = text;
  }
  return texts;
}

/** The instrument file and all that goes with it. @throws `files/not-text` */
async function wholeProject(project: ServedProject, record: string | null) {
  const { folder, path } = project;
  const file = await folder.read(path, INSTRUMENT_FILE_MOST_BYTES);
  const text = file && textOf(file.bytes);
  if (file && text === null) {
    throw new VanewrightError({
      code: 'files/not-text',
      what: 'The file is not UTF-8 text.',
      where: path,
      got: 'bytes that are not UTF-8',
      allowed: 'a text file in UTF-8',
      fix: 'Save it again from your editor with the encoding UTF-8.',
    });
  }
  return {
    folder: folder.name,
    path,
    text,
    version: file?.version ?? null,
    beside: await besideTexts(project),
    record,
  };
}

/** What a save began from. @throws `open/no-version` when it does not say. */
function beganFrom({ headers }: FastifyRequest): string | null {
  if (headers['if-none-match'] === '*') return null;
  const version = /^(?:W\/)?"([0-9a-f]{64})"$/.exec(headers['if-match'] ?? '')?.[1];
  if (version !== undefined) return version;
  throw new VanewrightError({
    code: 'open/no-version',
    what: 'It is not said which content the change began from.',
    where: 'If-Match',
    got: String(headers['if-match'] ?? 'nothing').slice(0, 80),
    allowed: 'If-Match with the ETag of the file as it was read, or If-None-Match: * for a new file',
    fix: 'Read the file first and send its ETag back.',
  });
}

function noFile(path: string): VanewrightError {
  return new VanewrightError({
    code: 'open/no-file',
    what: 'There is no such file in the project.',
    where: 'path',
    got: path.slice(0, 80),
    allowed: 'a path of /api/project/files',
    fix: 'Ask /api/project/files for the files.',
  });
}

interface PathQuery {
  Querystring: { path: string };
}

function addReading(app: FastifyInstance, project: ServedProject, record: string | null): void {
  app.get('/api/project', { schema: projectSchema }, () => wholeProject(project, record));
  app.get('/api/project/version', { schema: versionSchema }, async () => ({
    version: (await project.folder.read(project.path, INSTRUMENT_FILE_MOST_BYTES))?.version ?? null,
  }));
  app.get('/api/project/files', { schema: filesSchema }, () => project.folder.list());
  app.get<PathQuery>('/api/project/file', { schema: readFileSchema }, async ({ query }, reply) => {
    const file = await project.folder.read(query.path, FILE_MOST_BYTES);
    if (file === null) throw noFile(query.path);
    // Never shown by the browser as a page, whatever stands in it.
    return reply
      .type('application/octet-stream')
      .header('content-disposition', 'attachment')
      .header('etag', `"${file.version}"`)
      .header('cache-control', 'no-store')
      .send(Buffer.from(file.bytes));
  });
}

function addWriting(app: FastifyInstance, { folder, path }: ServedProject): void {
  app.removeAllContentTypeParsers();
  app.addContentTypeParser('*', { parseAs: 'buffer' }, (_request, body, done) => done(null, body));
  app.put<PathQuery & { Body: Buffer | null }>(
    '/api/project/file',
    { schema: writeFileSchema, bodyLimit: FILE_MOST_BYTES },
    async (request, reply) => {
      const to = request.query.path;
      const bytes = request.body ?? Buffer.alloc(0);
      const mostBytes = to === path ? INSTRUMENT_FILE_MOST_BYTES : FILE_MOST_BYTES;
      if (bytes.length > mostBytes) {
        throw new VanewrightError({
          code: 'open/too-large',
          what: 'That is larger than an instrument file can be.',
          where: to,
          got: `${bytes.length} bytes`,
          allowed: `${mostBytes} bytes or fewer`,
          fix: 'Check that it is the right file.',
        });
      }
      const version = await folder.write(to, bytes, beganFrom(request));
      void reply.header('etag', `"${version}"`);
      return { version };
    },
  );
}

/** Routes of the project's files. @param record - How the record is named to the maker; `null` where there is none. */
export async function addProjectRoutes(
  app: FastifyInstance,
  project: ServedProject,
  record: string | null,
): Promise<void> {
  addReading(app, project, record);
  await app.register(async (writing) => addWriting(writing, project));
}
