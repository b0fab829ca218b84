// Node 20 runs no TypeScript: the tool is bundled, then run.
import { defineConfig } from 'rolldown';

export default defineConfig({
  input: 'tools/docs/write.ts',
  platform: 'node',
  output: { file: 'out/docs.mjs', format: 'esm' },
});
