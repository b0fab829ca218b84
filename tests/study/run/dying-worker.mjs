// A thread that dies, once for each file named in the environment that is still there, and otherwise does its
// work.
/* global process, setImmediate */
import { existsSync, rmSync } from 'node:fs';
import replicate from '../../../dist/study/worker.js';

export default function (question) {
  const file = process.env.DYING_WORKER_FILE;
  if (question.replication !== 3 || !existsSync(file)) return replicate(question);
  if (!file.endsWith('-always')) rmSync(file);
  // Not an error of the task: it takes the thread down.
  setImmediate(() => {
    throw new Error('thread died');
  });
  return new Promise(() => undefined);
}
