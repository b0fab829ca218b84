// Builds the program and the scripts of its page into dist: `npm run build`. Prints warnings only, where the command line
// of the bundler lists every file.
import { chmodSync, rmSync } from 'node:fs';
import { build } from 'rolldown';
import config from '../rolldown.config.js';

rmSync('dist', { recursive: true, force: true });
await build(config);
chmodSync('dist/cli/main.js', 0o755);
