const text = { type: 'string' } as const;
const refused = { $ref: 'problems#' } as const;

const listed = {
  type: 'object',
  properties: { path: text, bytes: { type: 'integer' }, changedMs: { type: 'number' } },
} as const;

const query = { type: 'object', properties: { path: text }, required: ['path'] } as const;

export const projectSchema = {
  summary:
    'The project: its instrument file, small files beside it as text, and what else the server can do.',
  response: {
    200: {
      type: 'object',
      properties: {
        folder: text,
        path: text,
        text: { type: ['string', 'null'] },
        version: { type: ['string', 'null'] },
        beside: { type: 'object', additionalProperties: text },
        record: { type: ['string', 'null'] },
      },
    },
    '4xx': refused,
  },
} as const;

export const versionSchema = {
  summary: 'SHA-256 of the instrument file as it is now; null when there is none.',
  response: { 200: { type: 'object', properties: { version: { type: ['string', 'null'] } } } },
} as const;

export const filesSchema = {
  summary: 'Files of the project folder [byte, ms UTC].',
  response: {
    200: {
      type: 'object',
      properties: { files: { type: 'array', items: listed }, isWhole: { type: 'boolean' } },
    },
  },
} as const;

export const readFileSchema = {
  summary: 'A file of the project as it is, its SHA-256 as ETag.',
  querystring: query,
  response: { '4xx': refused },
} as const;

export const writeFileSchema = {
  summary:
    'Puts the body in the place of a file: If-Match names the content that the change began from, If-None-Match: * makes a new file.',
  consumes: ['application/octet-stream'],
  querystring: query,
  response: { 200: { type: 'object', properties: { version: text } }, '4xx': refused },
} as const;
