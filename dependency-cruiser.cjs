/** The layering of this repository; docs/architecture.md says the same in words. */

// Which step of the job may use which earlier step. One line a folder of src/core.
const base = ['units', 'error'];
const design = [...base, 'boards', 'codes', 'disc', 'head', 'instrument'];
const steps = {
  units: [],
  error: [],
  boards: [],
  report: base,
  wind: base,
  codes: base,
  disc: [...base, 'codes'],
  head: [...base, 'boards', 'codes', 'disc'],
  instrument: [...base, 'boards', 'codes', 'disc', 'head'],
  proof: design,
  weigh: [...design, 'wind'],
  record: [...base, 'codes', 'instrument'],
  program: [...design, 'record', 'report'],
  make: [...design, 'proof', 'program', 'record', 'report', 'wind'],
  fit: [...design, 'proof', 'record', 'report', 'wind'],
  publish: [...design, 'proof', 'make', 'program', 'report', 'fit'],
  faults: [...design, 'proof', 'record', 'wind'],
  review: [...design, 'proof', 'record', 'report', 'wind', 'faults'],
};

// The npm packages that a step may use; everything else in core is our own.
const packages = {
  units: ['pure-rand', '@stdlib/stats-base-dists-normal-quantile'],
  instrument: ['yaml', 'zod', 'fastest-levenshtein'],
  head: ['@stdlib/[^/]+'],
  proof: ['@stdlib/[^/]+'],
  weigh: ['@stdlib/[^/]+'],
  wind: ['@stdlib/[^/]+'],
  fit: ['astronomy-engine', 'geomagnetism'],
  faults: ['astronomy-engine'],
  make: ['fflate', 'manifold-3d', '@noble/hashes', '@tarikjabiri/dxf', 'pdf-lib', '@pdf-lib/fontkit'],
};

const oneOf = (names) => `(${names.join('|')})`;
const notTest = '[.]test[.]tsx?$';

const stepRules = Object.entries(steps).map(([step, uses]) => ({
  name: `step-${step}`,
  comment: `core/${step} may use: ${uses.join(', ') || 'nothing'}. Move the shared part into an earlier step, or pass it in.`,
  severity: 'error',
  from: { path: `^src/core/${step}/`, pathNot: notTest },
  to: { path: '^src/core/', pathNot: `^src/core/${oneOf([step, ...uses])}/` },
}));

const packageRules = Object.keys(steps).map((step) => ({
  name: `packages-${step}`,
  comment: `core/${step} may use these npm packages: ${(packages[step] ?? []).join(', ') || 'none'}.`,
  severity: 'error',
  from: { path: `^src/core/${step}/`, pathNot: notTest },
  to: { pathNot: ['^src/core/', ...(packages[step] ?? []).map((name) => `^node_modules/${name}/`)] },
}));

module.exports = {
  forbidden: [
    ...stepRules,
    ...packageRules,
    {
      name: 'step-is-in-the-table',
      comment: 'A new folder of src/core needs its line in the table of steps.',
      severity: 'error',
      from: { path: '^src/core/[^/]+/', pathNot: `^src/core/${oneOf(Object.keys(steps))}/` },
      to: {},
    },
    {
      name: 'through-the-door',
      comment: 'Import another step from its index.ts; the other files are its own business.',
      severity: 'error',
      from: { path: '^src/core/([^/]+)/' },
      to: { path: '^src/core/', pathNot: ['^src/core/$1/', '^src/core/[^/]+/index[.]ts$'] },
    },
    {
      name: 'through-the-door-from-outside',
      comment: 'Import a step from its index.ts; the other files are its own business.',
      severity: 'error',
      from: { path: '^(src/(ports|app|adapters|cli|server|web)|test)/' },
      to: { path: '^src/core/', pathNot: ['^src/core/index[.]ts$', '^src/core/[^/]+/index[.]ts$'] },
    },
    {
      name: 'ports-are-types',
      severity: 'error',
      from: { path: '^src/ports/' },
      to: { pathNot: ['^src/ports/', '^src/core/'] },
    },
    {
      name: 'app-knows-no-adapter',
      comment: 'Use cases take a port as an argument; only cli/ and server/ choose an adapter.',
      severity: 'error',
      from: { path: '^src/app/', pathNot: notTest },
      to: { pathNot: '^src/(app|core|ports)/' },
    },
    {
      name: 'adapters-know-no-app',
      severity: 'error',
      from: { path: '^src/adapters/', pathNot: notTest },
      to: { path: '^src/(app|cli|server|web)/' },
    },
    {
      name: 'adapters-are-strangers',
      comment: 'One adapter never imports another.',
      severity: 'error',
      from: { path: '^src/adapters/([^/]+)/', pathNot: notTest },
      to: { path: '^src/adapters/', pathNot: '^src/adapters/$1/' },
    },
    {
      name: 'web-runs-in-a-browser',
      comment:
        'web/ uses core/, the types of ports/ and the verb list app/api.ts; everything else it asks the server for.',
      severity: 'error',
      from: { path: '^src/web/', pathNot: notTest },
      to: {
        path: ['^src/(app|adapters|cli|server)/', '^(fs|path|os|child_process)$'],
        pathNot: '^src/app/api[.]ts$',
      },
    },
    {
      name: 'wired-in-one-place',
      comment: 'Only cli/wire.ts and server/wire.ts choose adapters.',
      severity: 'error',
      from: { path: '^src/(cli|server)/', pathNot: ['wire[.]ts$', notTest] },
      to: { path: '^src/adapters/' },
    },
    { name: 'no-circular', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'no-orphans',
      severity: 'error',
      from: { path: '^src/', orphan: true, pathNot: ['index[.]ts$', notTest, '[.]d[.]ts$'] },
      to: {},
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true, // type-only imports count: that is where cycles hide
    tsConfig: { fileName: 'tsconfig.base.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default', 'types'],
    },
  },
};
