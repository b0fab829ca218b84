#!/usr/bin/env node
import { EXIT } from './exit-code.js';
import { run } from './run.js';

const code = await run(process.argv.slice(2));
// Work that was given up may hold the process; everything else ends when its output has been taken.
if (code === EXIT.interrupted) process.exit(code);
process.exitCode ??= code;
