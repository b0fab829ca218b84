import { setFlagsFromString } from 'node:v8';

/**
 * Lets V8 put more of the engine's small functions into its event loop: a fifth faster on the reference line (bench).
 * It changes no result. To be imported before the engine has run hot.
 */
setFlagsFromString('--max-inlined-bytecode-size-cumulative=8000');
