// The page of the HTTP interface, from the description that the workbench's server gives of itself.
import { join } from 'node:path';

const { LiveStations } = await import('../dist/app/api.js');
const { memorySampleStore } = await import('../dist/adapters/memory/index.js');
const { nodeProjectFolder } = await import('../dist/adapters/projectFolder/index.js');
const { workbenchServer } = await import('../dist/server/workbench.js');

/** What the server says of itself, asked as any program would. */
async function description(root) {
  const server = await workbenchServer(
    {
      pages: join(root, 'src/web'),
      project: { folder: await nodeProjectFolder(join(root, 'examples/jetty')), path: 'instrument.yaml' },
      record: { name: 'record', store: memorySampleStore(), live: new LiveStations(), alerts: new Set() },
      say: (text) => process.stderr.write(`${text}\n`),
    },
    {
      host: '127.0.0.1',
      port: 0,
      hosts: ['127.0.0.1'],
      isAnyAddress: false,
      token: null,
      nowMs: () => Date.now(),
    },
  );
  try {
    return await (await fetch(`${server.url.split('?')[0].replace(/\/$/, '')}/openapi.json`)).json();
  } finally {
    await server.close();
  }
}

const kindOf = ({ type, enum: values, items, $ref, anyOf } = {}) =>
  values
    ? values.join(', ')
    : items
      ? `list of ${kindOf(items)}`
      : $ref
        ? 'a problem: code, what, where, got, allowed, fix'
        : anyOf
          ? anyOf.map(kindOf).join(' or ')
          : (type ?? 'any');

const cell = (text) =>
  String(text ?? '')
    .replaceAll('|', '\\|')
    .replaceAll('\n', ' ');

function parameterTable(parameters) {
  if (!parameters?.length) return [];
  return [
    '| parameter | in | kind | meaning |',
    '|---|---|---|---|',
    ...parameters.map(
      ({ name, in: where, required, schema, description: meaning }) =>
        `| \`${name}\`${required ? '' : ' (optional)'} | ${where} | ${cell(kindOf(schema))} | ${cell(meaning ?? schema?.description)} |`,
    ),
    '',
  ];
}

function answers(responses) {
  return Object.entries(responses ?? {}).map(([status, { description: meaning, content }]) => {
    const fields = Object.values(content ?? {})[0]?.schema;
    const row = fields?.items ?? fields;
    const named = Object.keys(row?.properties ?? {});
    const what = named.length > 0 ? `: ${named.map((name) => `\`${name}\``).join(', ')}` : '';
    return `- ${status}, ${meaning === 'Default Response' ? (kindOf(fields) === 'any' ? 'an answer' : kindOf(fields)) : meaning}${what}`;
  });
}

/** The page as Markdown. */
export async function httpReference(root) {
  const { info, paths } = await description(root);
  const parts = Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods).flatMap(([method, { summary, description: meaning, parameters, responses }]) => [
      `## ${method.toUpperCase()} ${path}`,
      '',
      ...(summary || meaning ? [[summary, meaning].filter(Boolean).join(' '), ''] : []),
      ...parameterTable(parameters),
      ...answers(responses),
      '',
    ]),
  );
  return [
    '# The HTTP interface',
    '',
    `Made by \`npm run generate\` from the description that the server of \`vanewright open\` gives of itself at \`/openapi.json\`. ${info.description}`,
    '',
    ...parts,
  ]
    .join('\n')
    .trimEnd()
    .concat('\n');
}
