import { expect, it } from 'vitest';
import { extremeCases, HEAVY, isQuick } from '../properties/extreme-cases.js';
import { endingsOf } from '../properties/extreme-runs.js';
import './built.js';

it('every key at its least and greatest values is refused in a line or run, with a number wherever one is due', {
  timeout: 900_000,
}, async () => {
  const cases = extremeCases(),
    endings = await endingsOf(
      // The others are run with the quick tests.
      cases.filter(({ name }, i) => !isQuick(i) && !HEAVY.has(name)),
      20,
    );
  expect(endings.filter(({ how }) => how === 'fault' || how === 'too long')).toEqual([]);
  // Some of them are accepted, or this would say nothing.
  expect(endings.filter(({ how }) => how === 'run').length).toBeGreaterThan(endings.length / 2);
});

it('those that ask for a million of something, or for centuries, may take long but do not fail', {
  timeout: 900_000,
}, async () => {
  const heavy = extremeCases().filter(({ name }) => HEAVY.has(name));
  expect((await endingsOf(heavy, 4)).filter(({ how }) => how === 'fault')).toEqual([]);
});
