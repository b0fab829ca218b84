// `npm run docs`, in the root of the repository.
import { readFileSync, writeFileSync } from 'node:fs';
import { pages, TEMPLATE } from './reference.js';

for (const [path, text] of pages(readFileSync(TEMPLATE, 'utf8'))) writeFileSync(path, text);
