// A worker that does what is asked of it, but for the first time that there is the file named: then it takes it
// away and misbehaves. One named `..-always` stays.
/* global process */
import { existsSync, rmSync } from 'node:fs';

const [how, file] = process.argv.slice(2);
const isSpoilt = existsSync(file);
if (isSpoilt && !file.endsWith('-always')) rmSync(file);
/** Does it as soon as something is asked. */
const whenAsked = (misbehave) => {
  if (isSpoilt) process.stdin.once('data', misbehave);
};
const before = {
  dies: () => whenAsked(() => process.kill(process.pid, 'SIGKILL')),
  hangs: () => whenAsked(() => process.kill(process.pid, 'SIGSTOP')),
  babbles: () => whenAsked(() => process.stdout.write('a debug message\n')),
  welcomes: () => isSpoilt && process.stdout.write('Welcome to node7\n'),
  greets: () =>
    isSpoilt &&
    process.stdout.write('rateproof worker {"version":"0.1.0","build":"b","messages":"V8 9, LE"}\n'),
  fails: () => {
    if (!isSpoilt) return;
    process.stderr.write('no room on node7\nask again tomorrow\n');
    process.exit(7);
  },
};
before[how]();
process.argv.splice(1, process.argv.length, 'main.js', 'worker');
await import('../../../../dist/cli/main.js');
