import fc from 'fast-check';
import { anyKind } from './batch.js';
import { judgeProcess, judgeRead, type Verdict } from './demands.js';
import { runProgram, withFiles } from './program.js';
import { mildCases, mildScenario } from './scenarios.js';

/** What each study is asked, short. Values of rates and places are those of a small build. */
const ASKED: readonly (readonly string[])[] = [
  ['check'],
  ['check', '--json'],
  ['simulate', '--replications', '1', '--json'],
  ['simulate', '--replications', '2', '--out', 'out'],
  ['rate', '--from', '1', '--to', '2', '--step', '1', '--replications', '2', '--weeks', '3'],
  ['reliefs', '--replications', '2', '--values', '2'],
  ['buffers', '--budget', '3', '--replications', '3'],
  ['reach', '--replications', '2'],
];
/** A run that takes so long, in seconds, is not repeated by a study. */
const QUICK = 0.3;

type Case = { readonly spoilt: Parameters<typeof mildScenario>[0]; readonly args: readonly string[] };

const argsOf = (main: string, [command = '', ...rest]: readonly string[]): string[] => [
  command,
  main,
  ...rest,
  ...(command === 'check' ? [] : ['--workers', '1']),
];

/** Scenarios that are odd but sound, with the whole program: statistics, tables, pictures. */
export const studies = anyKind({
  name: 'studies',
  batch: 10,
  cases: fc.record({ spoilt: mildCases, args: fc.constantFrom(...ASKED) }),
  judge: async ({ spoilt, args }: Case, reader): Promise<Verdict> => {
    const { main, files } = mildScenario(spoilt),
      read = await reader.ask({ text: files[main] ?? '', file: main, files, run: true }),
      verdict = judgeRead(read);
    if (verdict.kind === 'skipped' || (verdict.kind === 'run' && read.seconds > QUICK))
      return { kind: 'skipped', why: 'too long' };
    if (verdict.kind !== 'run' && args[0] !== 'check') return verdict;
    const outcome = await withFiles(files, (folder) => runProgram(folder, argsOf(main, args)));
    return judgeProcess(outcome, true);
  },
  show: ({ spoilt, args }) => {
    const { main, files } = mildScenario(spoilt);
    return { ...files, 'command.txt': `rateproof ${argsOf(main, args).join(' ')}\n` };
  },
});
