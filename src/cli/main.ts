#!/usr/bin/env node
import { isBrief, runBrief } from './front/brief.js';

const args = process.argv.slice(2);
// A worker has nobody in front of it: it keeps this thread free itself, for what it is asked.
const code = isBrief(args)
  ? await runBrief(args)
  : args[0] === 'worker'
    ? await (await import('./run.js')).run(args)
    : await (await import('./front/conduct.js')).conduct(args);
process.exitCode ??= code;
