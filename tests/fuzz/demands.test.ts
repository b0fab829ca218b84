import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { noCounts, tryBatch } from './batch.js';
import { judgeProcess, judgeRead, rawMark, type Verdict } from './demands.js';
import type { Kind } from './kinds.js';
import { Reader } from './reader.js';

const ended = { code: 0, stdout: '', stderr: '', tooLong: false };
const REFUSED =
  'a.yaml:3:5 route: a list; got 7\nerror: 1 problem in a.yaml; nothing was run\nhint: read docs\n';

describe('what is demanded of a process', () => {
  it.each([
    ['a fault', { code: 1, stderr: 'error: this is a fault\n' }, /^exit code 1/],
    ['an end by a signal', { code: null }, /^exit code null/],
    ['no end', { tooLong: true }, /^no end/],
    ['a cursor that moves', { stdout: 'a\u001b[2J\n' }, /^a raw U\+001b in stdout/],
    ['a direction that is turned', { stderr: '\u202ecba\n' }, /^a raw U\+202e in stderr/],
    ['an isolate that is not ended', { stdout: '\u2068abc\n' }, /^a raw U\+2068 in stdout/],
    ['a refusal without a word', { code: 2 }, /^no error line/],
    ['an error on two lines', { code: 2, stderr: 'error: no\nsuch file\n' }, /^no error line/],
    [
      'a problem without its place',
      { code: 2, stderr: REFUSED.replace(':3:5', '') },
      /^a problem that is no line/,
    ],
  ])('%s fails', (_, outcome, why) => {
    const verdict = judgeProcess({ ...ended, ...outcome }, false);
    expect(verdict).toMatchObject({ kind: 'failed', why: expect.stringMatching(why) as string });
  });

  it('an answer, a finding and a refusal with its hint pass', () => {
    expect(judgeProcess({ ...ended, stdout: 'x\n' }, false).kind).toBe('accepted');
    expect(judgeProcess({ ...ended, code: 3 }, false).kind).toBe('accepted');
    expect(judgeProcess({ ...ended, code: 2, stderr: REFUSED }, false).kind).toBe('refused');
  });

  it('a name from the right in its isolates is no raw mark', () => {
    expect(rawMark('a \u2068\u05d0\u05d1\u2069 b\n')).toBeUndefined();
  });
});

describe('what is demanded of a scenario', () => {
  const read = { end: 'refused', stage: 'read', seconds: 1 } as const;
  it.each([
    ['no problem', []],
    ['one of two lines', ['a.yaml:1:1 a\nb']],
    ['one in the words of a library', ['a.yaml:1:1 route: Invalid input']],
  ])('a refusal with %s fails', (_, problems) => {
    expect(judgeRead({ ...read, problems }).kind).toBe('failed');
  });

  it('reading may not take too long, a run may', () => {
    expect(judgeRead({ ...read, end: 'too long' }).kind).toBe('failed');
    expect(judgeRead({ ...read, end: 'too long', stage: 'run' }).kind).toBe('skipped');
  });
});

describe('a batch', () => {
  const made: number[] = [];
  const numbers = (isFault: (n: number) => boolean): Kind<number> => ({
    name: 'numbers',
    batch: 100,
    cases: fc.nat(100_000),
    judge: (n): Promise<Verdict> => {
      made.push(n);
      return Promise.resolve(isFault(n) ? { kind: 'failed', why: `${n} is too much` } : { kind: 'run' });
    },
    show: (n) => ({ 'number.txt': String(n) }),
  });
  const tried = async (kind: Kind<number>, batch: number, known = new Set<string>()) => {
    const counts = noCounts();
    made.length = 0;
    const fault = await tryBatch(kind, { seed: 'x', batch }, { reader: new Reader(), counts, known });
    return { fault, counts, made: [...made] };
  };

  it('is the same from the same seed, and another from another', async () => {
    const none = numbers(() => false),
      first = await tried(none, 0);
    expect(first.counts).toMatchObject({ tried: 100, run: 100, failed: 0 });
    expect((await tried(none, 0)).made).toEqual(first.made);
    expect((await tried(none, 1)).made).not.toEqual(first.made);
  });

  it('tells the smallest case of a fault once, then counts it', async () => {
    const known = new Set<string>(),
      large = numbers((n) => n >= 777),
      { fault } = await tried(large, 0, known);
    expect(fault).toMatchObject({ why: '777 is too much', shown: { 'number.txt': '777' } });
    const again = await tried(large, 0, known);
    expect(again.fault).toBeUndefined();
    expect(again.counts.tried).toBe(100);
    expect(again.counts.failed).toBeGreaterThan(50);
  });
});
