/** The layering of this repository. docs/architecture.md draws the same picture. */

// Which step of the job may use which earlier step. One line per folder of src/core.
const base = ['units', 'error'];
const steps = {
  units: [],
  error: [],
  report: base,
  wind: base,
  codes: base,
  disc: [...base, 'codes'],
  head: [...base, 'codes', 'disc'],
  instrument: [...base, 'codes', 'disc', 'head'],
  proof: [...base, 'codes', 'disc', 'head', 'instrument'],
  weigh: [...base, 'instrument', 'wind'],
  make: [...base, 'codes', 'disc', 'head', 'instrument', 'report'],
  program: [...base, 'codes', 'head', 'instrument'],
  fit: [...base, 'codes', 'disc', 'head', 'instrument', 'wind'],
  record: [...base, 'codes', 'instrument'],
  faults: [...base, 'codes', 'proof', 'instrument', 'record', 'wind'],
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

module.exports = {
  forbidden: [
    ...stepRules,
    {
      // extend pathNot, per step, with the few npm packages that step may use
      name: 'core-is-pure',
      comment: 'src/core imports nothing but src/core: no node: module, no other layer, an npm package only where named here.',
      severity: 'error',
      from: { path: '^src/core/', pathNot: notTest },
      to: { pathNot: '^src/core/' },
    },
    {
      name: 'through-the-door',
      comment: 'Import another step from its index.ts; the other files are its own business.',
      severity: 'error',
      from: { path: '^src/core/([^/]+)/' },
      to: { path: '^src/core/', pathNot: ['^src/core/$1/', 'index[.]ts$'] },
    },
    {
      name: 'through-the-door-from-outside',
      comment: 'Import a step from its index.ts; the other files are its own business.',
      severity: 'error',
      from: { path: '^(src/(ports|app|adapters|cli|server|web)|test)/' },
      to: { path: '^src/core/', pathNot: 'index[.]ts$' },
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
      comment: 'web/ uses core/ and the verb list app/api.ts; everything else it asks the server for.',
      severity: 'error',
      from: { path: '^src/web/', pathNot: notTest },
      to: { path: ['^src/(ports|app|adapters|cli|server)/', '^(fs|path|os|child_process)$'], pathNot: '^src/app/api[.]ts$' },
    },
    {
      name: 'wired-in-one-place',
      comment: 'Only cli/wire.ts and server/wire.ts choose adapters.',
      severity: 'error',
      from: { path: '^src/(cli|server)/', pathNot: ['wire[.]ts$', notTest] },
      to: { path: '^src/adapters/' },
    },
    { name: 'no-circular', severity: 'error', from: {}, to: { circular: true } },
    { name: 'no-orphans', severity: 'error', from: { path: '^src/', orphan: true, pathNot: ['index[.]ts$', notTest, '[.]d[.]ts$'] }, to: {} },
  ],
  options: {
    // see docs/architecture.md
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true, // type-only imports count: that is where cycles hide
    tsConfig: { fileName: 'tsconfig.base.json' },
  },
};
