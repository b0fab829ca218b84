// A worker that adds a letter to the file named for each replication that it has run. Others of its messages are
// short.
/* global process */
import { appendFileSync } from 'node:fs';

const [file] = process.argv.slice(2),
  write = process.stdout.write.bind(process.stdout);
process.stdout.write = (bytes, ...rest) => {
  if (typeof bytes !== 'string' && bytes.length > 300) appendFileSync(file, 'r');
  return write(bytes, ...rest);
};
process.argv.splice(1, process.argv.length, 'main.js', 'worker');
await import('../../dist/cli/main.js');
