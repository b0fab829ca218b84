// Node 20 runs no TypeScript: the tool is bundled, then run. What it tries is `dist`; of the sources it has only the reader
// of the command line, whose package.json lies two folders up, as from `dist/chunks`.
import { defineConfig } from 'rolldown';

export default defineConfig({
  input: 'tools/fuzz/main.ts',
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
  output: { file: 'out/tools/fuzz.mjs', format: 'esm', codeSplitting: false },
});
