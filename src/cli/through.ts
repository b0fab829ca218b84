import { fileURLToPath } from 'node:url';
import type { ReplicatorOptions } from '../study/run/replicator.js';
import type { Processes } from '../study/run/workers/processes.js';
import type { Values } from './arguments/option.js';
import type { WORKERS } from './arguments/workers.js';
import { inFront } from './front/in-front.js';
import { say } from './output.js';

/** This program, as it is called on this machine; it lies a folder beside the chunk that this file is in. */
const HERE = [process.execPath, fileURLToPath(new URL('../cli/main.js', import.meta.url))];

/** Those of the command that is run: all its studies share them. */
let processes: Processes | undefined;

/** What runs the replications that a command asks for; undefined: threads do. */
export async function throughOf({
  through,
  program = HERE,
  workers,
  quiet,
}: Values<typeof WORKERS> & { readonly quiet: boolean }): Promise<ReplicatorOptions['through']> {
  if (through.length === 0) return undefined;
  const { Processes } = await import('../study/run/workers/processes.js');
  processes ??= new Processes({
    commands: through.map((words) => [...words, ...program, 'worker']),
    workers,
    say: quiet ? () => undefined : say,
    onProcess: (pid, isThere) => {
      inFront().tell({ kind: 'process', pid, isThere });
    },
  });
  return processes.runner;
}

/** The command is over; resolves when none of them is left. */
export async function endProcesses(): Promise<void> {
  const ended = processes;
  processes = undefined;
  await ended?.close();
}
