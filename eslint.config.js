import { readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import js from '@eslint/js';
import { defineConfig } from 'eslint/config';
import tseslint from 'typescript-eslint';

/** Layers each layer may import. `types` of a layer: its types only; `model`: of flow, only the compiled model. */
const layers = {
  random: [],
  flow: ['random'],
  measure: ['flow', 'random'],
  scenario: ['flow model', 'random'],
  records: ['scenario', 'flow model', 'random'],
  study: ['records', 'scenario', 'measure', 'flow', 'random'],
  report: ['study', 'records types', 'measure types', 'scenario types'],
  cli: ['report', 'study', 'records', 'measure', 'flow', 'random', 'scenario'],
  live: ['report', 'study', 'records', 'measure', 'flow', 'random', 'scenario'],
};

/** Layers that must run unchanged in a browser worker: no files, clock, console or chance of their own. */
const pureLayers = ['random', 'flow', 'measure', 'records'];

const nodeModules = {
  regex: `^(node:|(${builtinModules.join('|')})$)`,
  message: 'this layer runs in a browser worker: no Node modules',
};

/** Patterns that forbid in `layer` every import its entry in `layers` does not grant. */
function forbiddenImports(layer) {
  const granted = layers[layer];
  const patterns = Object.keys(layers).flatMap((other) => {
    if (other === layer || granted.includes(other)) return [];
    // A folder of that name beside the file is in its own layer.
    const inFolder = `^(\\.\\./)+${other}/`;
    if (granted.includes(`${other} model`))
      return [{ regex: `${inFolder}(?!model/)`, message: `${layer} may import only ${other}/model` }];
    if (granted.includes(`${other} types`))
      return [
        { regex: inFolder, allowTypeImports: true, message: `${layer} may import only types of ${other}` },
      ];
    return [{ regex: inFolder, message: `imports point down: ${layer} may not import ${other}` }];
  });
  return pureLayers.includes(layer) ? [...patterns, nodeModules] : patterns;
}

const layerRules = Object.keys(layers).map((layer) => ({
  files: [`src/${layer}/**/*.ts`],
  rules: { '@typescript-eslint/no-restricted-imports': ['error', { patterns: forbiddenImports(layer) }] },
}));

const outsideWorld = [
  'Date',
  'performance',
  'console',
  'process',
  'crypto',
  'fetch',
  'globalThis',
  'Buffer',
  'require',
  'setTimeout',
  'setInterval',
  'setImmediate',
  'queueMicrotask',
];

/** Functions of which engines give other last bits; so does `**`, but for powers of two. */
const unlike = ['exp', 'expm1', 'log', 'log1p', 'log2', 'pow', 'cbrt', 'hypot', 'sin', 'cos', 'tan']
  .concat(['asin', 'acos', 'atan', 'atan2', 'sinh', 'cosh', 'tanh', 'asinh', 'acosh', 'atanh'])
  .map((property) => ({
    object: 'Math',
    property,
    message: 'not the same bits everywhere: see random/elementary.ts and random/power.ts',
  }));

const typeScript = ['src/**/*.ts', 'tests/**/*.ts', 'bench/**/*.ts', 'tools/**/*.ts'];
/** Folders that read typed arrays by ids in range: an element is there (see tools/types.mjs). */
const arrays = JSON.parse(readFileSync(new URL('tsconfig.arrays.json', import.meta.url), 'utf8')).include.map(
  (folder) => `${folder}/**/*.ts`,
);

export default defineConfig(
  { ignores: ['dist/', 'out/', 'coverage/', 'node_modules/', 'reports/'] },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  js.configs.recommended,
  {
    files: typeScript,
    extends: [tseslint.configs.strictTypeChecked],
    languageOptions: { parserOptions: { project: './tsconfig.json', tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      '@typescript-eslint/consistent-type-imports': ['error', { disallowTypeAnnotations: false }],
    },
  },
  {
    files: arrays,
    languageOptions: { parserOptions: { project: './tsconfig.arrays.json' } },
    // What a rule of the engine relies on (a unit in this place, a step of that unit) is checked by audit.ts in every run.
    rules: { '@typescript-eslint/no-non-null-assertion': 'off' },
  },
  {
    files: ['src/live/**/*.ts', 'tests/live/**/*.ts'],
    languageOptions: { parserOptions: { project: './tsconfig.live.json' } },
  },
  {
    files: ['bench/**/*.mjs', 'tools/**/*.mjs'],
    languageOptions: { globals: { console: 'readonly', performance: 'readonly', process: 'readonly' } },
  },
  ...layerRules,
  {
    files: ['src/scenario/**/*.ts', 'src/study/**/*.ts'],
    rules: { 'no-restricted-properties': ['error', ...unlike] },
  },
  {
    files: pureLayers.map((layer) => `src/${layer}/**/*.ts`),
    rules: {
      'no-restricted-globals': [
        'error',
        ...outsideWorld.map((name) => ({ name, message: 'this layer is pure: pass the value in' })),
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'draw from a named stream' },
        ...unlike,
      ],
      'no-restricted-syntax': [
        'error',
        {
          selector: 'BinaryExpression[operator="**"]:not([left.value=2])',
          message: 'not the same bits everywhere: see random/power.ts',
        },
      ],
    },
  },
);
