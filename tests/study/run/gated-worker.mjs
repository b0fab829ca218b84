// A thread whose replication 1 ends only when the file named in the environment is there, and whose
// replication 6 is a fault if so asked.
/* global process */
import { existsSync } from 'node:fs';
import { setTimeout } from 'node:timers/promises';
import replicate from '../../../dist/study/worker.js';

export default async function (question) {
  if (question.replication === 6 && process.env.GATED_WORKER_FAULT)
    return { kind: 'fault', message: 'replication 6 failed' };
  const answer = replicate(question);
  while (
    answer.kind === 'observation' &&
    question.replication === 1 &&
    !existsSync(process.env.GATED_WORKER_FILE)
  )
    await setTimeout(5);
  return answer;
}
