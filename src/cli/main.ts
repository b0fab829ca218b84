#!/usr/bin/env node
import { conduct } from './front/conduct.js';

const code = await conduct(process.argv.slice(2));
process.exitCode ??= code;
