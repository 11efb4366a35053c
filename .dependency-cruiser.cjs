/** Layers: imports point down only. Inside the core a folder may import those listed before it. */
const coreOrder = [
  'words',
  'model',
  'geometry',
  'colour',
  'yarn',
  'warp',
  'cartoon',
  'chart',
  'schedule',
  'order',
  'materials',
  'hanging',
  'ornaments',
  'replan',
  'plan',
  'photo',
  'compare',
  'report',
  'project',
  'contract',
];

const insideCore = coreOrder.map((folder, index) => ({
  name: `core-${folder}-looks-down-only`,
  severity: 'error',
  from: { path: `^src/core/${folder}/` },
  to: { path: `^src/core/(${[...coreOrder.slice(index + 1), '_none_'].join('|')})/` },
}));

module.exports = {
  forbidden: [
    { name: 'no-cycles', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'core-imports-only-core',
      severity: 'error',
      from: { path: '^src/core/' },
      to: { path: '^src/(main|renderer)/' },
    },
    { name: 'core-has-no-node', severity: 'error', from: { path: '^src/core/' }, to: { dependencyTypes: ['core'] } },
    {
      name: 'core-packages',
      severity: 'error',
      from: { path: '^src/core/' },
      to: { path: 'node_modules', pathNot: 'node_modules/(zod|fflate|saxes|svg-pathdata)/' },
    },
    {
      name: 'core-folder-is-listed',
      severity: 'error',
      from: { path: '^src/core/', pathNot: `^src/core/(${coreOrder.join('|')})/` },
      to: {},
    },
    {
      name: 'main-never-meets-renderer',
      severity: 'error',
      from: { path: '^src/main/' },
      to: { path: '^src/renderer/' },
    },
    {
      name: 'renderer-never-meets-main',
      severity: 'error',
      from: { path: '^src/renderer/' },
      to: { path: '^src/main/' },
    },
    {
      name: 'renderer-has-no-node',
      severity: 'error',
      from: { path: '^src/renderer/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'source-never-imports-tests',
      severity: 'error',
      from: { path: '^src/' },
      to: { path: '^(tests|bench|scripts)/' },
    },
    { name: 'resolvable', severity: 'error', from: {}, to: { couldNotResolve: true, pathNot: '\\?' } },
    ...insideCore,
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'src/main/tsconfig.json' },
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
      extensions: ['.ts', '.tsx', '.js', '.mjs', '.cjs', '.json', '.css'],
    },
  },
};
