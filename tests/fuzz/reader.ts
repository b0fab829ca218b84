import { type ChildProcess, fork } from 'node:child_process';
import { join } from 'node:path';
import type { Files } from './spoilt/sources.js';

/** A scenario, or what-ifs of the `base`. */
export interface ToRead {
  readonly text: string;
  readonly file: string;
  readonly files: Files;
  readonly base?: { readonly text: string; readonly file: string };
  /** Whether what is accepted runs for a replication. */
  readonly run: boolean;
}
/** How far it came, and how it ended; `seconds` are those of the whole. */
export interface Read {
  readonly end: 'refused' | 'unplanned' | 'accepted' | 'run' | 'thrown' | 'too long' | 'no memory' | 'died';
  readonly stage: 'read' | 'plan' | 'run';
  readonly problems?: readonly string[];
  readonly error?: string;
  readonly seconds: number;
}

/** Seconds for each stage. Reading and planning may not take longer; a run that does says nothing. */
const LONGEST = { read: 10, plan: 10, run: 3 } as const;
const MEMORY_MB = 1024,
  NO_MEMORY = /Array buffer allocation failed|Invalid (typed )?array( buffer)? length|out of memory/i;

/** The program as built in a process of its own, begun anew whenever it dies or has to be ended. */
export class Reader {
  private child: ChildProcess | undefined;

  constructor(private readonly longest: Readonly<Record<Read['stage'], number>> = LONGEST) {}

  ask(asked: ToRead): Promise<Read> {
    const child = (this.child ??= fork(join(process.cwd(), 'tests/fuzz/reader.mjs'), {
      execArgv: [`--max-old-space-size=${MEMORY_MB}`],
      serialization: 'advanced',
      stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
    }));
    const begun = Date.now();
    let stage: Read['stage'] = 'read',
      stderr = '',
      timer: NodeJS.Timeout;
    return new Promise((resolve) => {
      const end = (read: Omit<Read, 'seconds' | 'stage'>): void => {
        clearTimeout(timer);
        child.removeAllListeners();
        child.stderr?.removeAllListeners();
        resolve({ stage, ...read, seconds: (Date.now() - begun) / 1000 });
      };
      const wait = (): void => {
        clearTimeout(timer);
        timer = setTimeout(() => {
          this.close();
          end({ end: 'too long' });
        }, this.longest[stage] * 1000);
      };
      child.stderr?.on('data', (text) => {
        stderr += String(text);
      });
      child.on('message', (message: Partial<Read>) => {
        if (message.end === 'thrown' && NO_MEMORY.test(message.error ?? ''))
          end({ ...message, end: 'no memory' });
        else if (message.end !== undefined) end({ ...message, end: message.end });
        else {
          stage = message.stage === 'read' ? 'plan' : 'run';
          wait();
        }
      });
      child.on('exit', (code, signal) => {
        this.child = undefined;
        end({
          end: /heap/.test(stderr) ? 'no memory' : 'died',
          error: `${code} ${signal}: ${stderr.slice(0, 2000)}`,
        });
      });
      wait();
      child.send(asked);
    });
  }

  close(): void {
    this.child?.removeAllListeners();
    this.child?.kill('SIGKILL');
    this.child = undefined;
  }
}
