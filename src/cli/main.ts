#!/usr/bin/env node
import { isBrief, runBrief } from './front/brief.js';

const args = process.argv.slice(2);
const code = isBrief(args) ? await runBrief(args) : await (await import('./front/conduct.js')).conduct(args);
process.exitCode ??= code;
