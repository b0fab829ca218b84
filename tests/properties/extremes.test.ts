import { describe, expect, it } from 'vitest';
import { SECTIONS } from '../scenario/read-small.js';
import { extremeCases, HEAVY, isQuick } from './extreme-cases.js';
import { endingsOf } from './extreme-runs.js';

const cases = extremeCases();

describe('the least and greatest values of every key', () => {
  it('are made from the schema: hundreds, of every section', () => {
    expect(cases.length).toBeGreaterThan(600);
    const sections = new Set(cases.map(({ name }) => name.split(/[#:]| › /)[0]));
    // Kinds of defect have a note, and that is all; ends of levers, and values that were measured, are as those of
    // the values whose place they take.
    expect([...sections].sort()).toEqual(
      SECTIONS.split(', ')
        .filter(
          (section) => !['scenario', 'note', 'defects', 'levers', 'measured', 'include'].includes(section),
        )
        .sort(),
    );
    const names = new Set(cases.map(({ name }) => name));
    expect([...HEAVY].filter((name) => !names.has(name))).toEqual([]);
  });

  it('are refused in a line or run, with a number wherever one is due: a sixth of them', {
    timeout: 120_000,
  }, async () => {
    const some = cases.filter(({ name }, i) => isQuick(i) && !HEAVY.has(name));
    expect((await endingsOf(some, 20)).filter(({ how }) => how === 'fault' || how === 'too long')).toEqual(
      [],
    );
  });
});
