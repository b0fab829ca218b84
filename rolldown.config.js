// The program is shipped as a few chunks, not a file a module: in one scope V8 sees through constants and calls of the
// engine, which is 1.4 times as fast as the same modules imported from each other (measured by `npm run bench`). Pure
// JavaScript packages go into the chunks too: a hundred small files less to open, and `check` starts a tenth of a second
// sooner. What has files of its own (native canvas, fonts, the thread pool) stays outside.
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'rolldown';

const program = defineConfig({
  input: {
    'cli/main': 'src/cli/main.ts',
    'cli/thread': 'src/cli/thread.ts',
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
        { name: 'engine', test: /src\/(flow|random)\//, priority: 2 },
        { name: 'start', test: /src\/cli\/run\.ts$/, priority: 1 },
        { name: 'check', test: /src\/(cli\/load|study\/capacity\/capacity|report\/terminal\/capacity)\.ts$/ },
      ],
    },
  },
});

/** What the page of a report carries: pictures, drawn by the browser's own canvas. */
const live = defineConfig({
  input: { live: 'src/live/main.ts' },
  platform: 'browser',
  plugins: [
    {
      name: 'canvas of the page',
      resolveId: (source, importer) =>
        source.endsWith('/canvas.js') && importer !== undefined && !importer.includes('/live/')
          ? fileURLToPath(new URL('src/live/canvas.ts', import.meta.url))
          : null,
    },
  ],
  optimization: { inlineConst: true },
  output: { dir: 'dist/page', format: 'iife', entryFileNames: '[name].js', minify: true, comments: false },
});

export default [program, live];
