import { command } from '../arguments/command.js';
import { EXIT } from '../exit-code.js';
import { UsageError } from '../usage-error.js';

export const worker = command({
  name: 'worker',
  words: {},
  summary: 'runs replications for a study, which starts it by --through',
  about: `runs replications for a study on this machine or another, which starts it by --through and speaks to
it on its standard input and output; it ends when its input does`,
  examples: [
    'rateproof worker   (started by a study, which speaks to it)',
    [
      'rateproof simulate line.yaml --workers 8 --through "ssh node7"',
      'eight replications at a time, each by a process on node7',
    ],
    'rateproof rate line.yaml --from 3 --to 6 --workers 32 --through "srun --exclusive -n1 -c1"',
  ],
  options: {},
  request: (given) => given,
  run: async () => {
    if (process.stdin.isTTY || process.stdout.isTTY)
      throw new UsageError(
        'expected a study that speaks to the worker, got a terminal',
        'give --through to the study, which starts its workers; see docs/through.md',
      );
    const { serve } = await import('../../study/run/workers/serve.js');
    await serve(process.stdin, process.stdout);
    return EXIT.done;
  },
});
