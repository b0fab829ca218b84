#!/usr/bin/env node
import { conduct } from './front/conduct.js';

const args = process.argv.slice(2);
// A worker has nobody in front of it: it keeps this thread free itself, for what it is asked.
const code = await (args[0] === 'worker' ? (await import('./run.js')).run(args) : conduct(args));
process.exitCode ??= code;
