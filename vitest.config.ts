import { defineConfig } from 'vitest/config';
import DearestFirst from './tests/dearest-first.js';

// Set before the workers start: on the main thread Node reads the zone anew, in a worker thread it does not.
process.env['TZ'] = 'UTC';

export default defineConfig({
  test: {
    // Slow statistical checks live in tests/statistics/: `npm run test:slow`; `npm test` leaves them out.
    include: ['tests/**/*.test.ts'],
    pool: 'forks',
    maxWorkers: 2,
    // The program as built runs as it is, not wrapped; see tests/statistics/built.ts.
    server: { deps: { external: [/\/dist\//] } },
    // Modules of the sources hold no state that a test changes: loaded once a process, the suite takes a minute and a half less.
    isolate: false,
    // A busy machine is no fault of a test.
    testTimeout: 60_000,
    sequence: { sequencer: DearestFirst },
    env: { TZ: 'UTC' },
    reporters: ['default', './tests/plain-summary.ts'],
  },
});
