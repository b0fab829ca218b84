// Node 20 runs no TypeScript: the tool is bundled, then run. The engine is that of `dist`, which it loads itself.
import { defineConfig } from 'rolldown';

export default defineConfig({
  input: 'tools/coverage/main.ts',
  platform: 'node',
  external: [/^node:/],
  output: { file: 'out/coverage.mjs', format: 'esm' },
});
