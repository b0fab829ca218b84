/**
 * Commands as a library, as built into `dist/cli/library.js`: for tests of the built program that need no
 * process of their own.
 */

export { inFront, workFor } from './front/in-front.js';
export { run } from './run.js';
