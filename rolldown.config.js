// The program is shipped as a few chunks, not a file a module: in one scope V8 sees through constants and calls of the
// engine, which is 1.4 times as fast as the same modules imported from each other (measured by `npm run bench`). Pure
// JavaScript packages go into the chunks too: a hundred small files less to open, and `check` starts a tenth of a second
// sooner. What has files of its own (native canvas, fonts, the thread pool) stays outside.
import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'rolldown';

const program = defineConfig({
  input: {
    'cli/main': 'src/cli/main.ts',
    'cli/thread': 'src/cli/thread.ts',
    'cli/library': 'src/cli/library.ts',
    'study/worker': 'src/study/worker.ts',
    'study/library': 'src/study/library.ts',
  },
  platform: 'node',
  external: [
    /^node:/,
    '@napi-rs/canvas',
    'chart.js',
    'chart.js/auto',
    'tinypool',
    'cli-progress',
    'eta',
    'dejavu-fonts-ttf',
    /^@expo/,
  ],
  optimization: { inlineConst: true },
  output: {
    dir: 'dist',
    format: 'esm',
    entryFileNames: '[name].js',
    chunkFileNames: 'chunks/[name].js',
    comments: { jsdoc: false },
    // With all that a group's files import, so that help opens one chunk and `check` two, and not twenty.
    codeSplitting: {
      groups: [
        // What only waits in front needs none of what does the work.
        { name: 'front', test: /src\/cli\/(output|interrupt|in-front|usage-error)\.ts$/, priority: 3 },
        { name: 'engine', test: /src\/(flow|random)\//, priority: 2 },
        { name: 'start', test: /src\/cli\/run\.ts$/, priority: 1 },
        { name: 'check', test: /src\/(cli\/load|study\/capacity\/capacity|report\/terminal\/capacity)\.ts$/ },
      ],
    },
  },
});

const path = (name) => fileURLToPath(new URL(name, import.meta.url)),
  instead = (name) => path(`src/live/instead/${name}.ts`);
/** What stands in the page for modules of Node, and for our own that need them. */
const INSTEAD = new Map([
  ...['report/canvas', 'scenario/digest', 'study/version', 'study/run/threads'].map((name) => [
    path(`src/${name}.ts`),
    instead(name.split('/').at(-1)),
  ]),
  ['node:path', instead('node-path')],
  ['node:module', instead('node-module')],
  ['node:timers/promises', instead('node-timers')],
  ['node:v8', instead('node-v8')],
  ['csv-parse/sync', path('node_modules/csv-parse/dist/esm/sync.js')],
]);
const { version } = JSON.parse(readFileSync(path('package.json'), 'utf8'));

/** A script that the page of a report carries. */
const ofPage = (name, entry) =>
  defineConfig({
    input: { [name]: entry },
    platform: 'browser',
    transform: { define: { PROGRAM: JSON.stringify(version), 'import.meta': '{}' } },
    plugins: [
      {
        name: 'in a page',
        resolveId(source, importer) {
          if (INSTEAD.has(source)) return INSTEAD.get(source);
          if (importer === undefined || !source.startsWith('.')) return null;
          return INSTEAD.get(resolve(dirname(importer), source).replace(/\.js$/, '.ts')) ?? null;
        },
      },
    ],
    optimization: { inlineConst: true },
    output: { dir: 'dist/page', format: 'iife', entryFileNames: '[name].js', minify: true, comments: false },
  });

// Pictures, drawn by the browser's own canvas; and the engine, for a thread of its own.
export default [program, ofPage('live', 'src/live/main.ts'), ofPage('engine', 'src/live/engine/main.ts')];
