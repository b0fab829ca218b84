import { describe, expect, it } from 'vitest';
import { A_SCENARIO, SECTIONS, WHAT_IFS } from '../../../src/scenario/file/ours.js';
import { SECTIONS as KEYS } from '../read-small.js';

describe('what is known as a scenario', () => {
  it('has one of the keys of the schema but note, which others have too', () => {
    expect([...SECTIONS].sort()).toEqual(
      KEYS.split(', ')
        .filter((key) => key !== 'note')
        .sort(),
    );
  });

  it.each([
    [{}, true],
    [{ route: [] }, true],
    [{ routs: [], x: 1 }, true],
    [{ note: 'x' }, false],
    [{ password: 'x', services: {} }, false],
    [['route'], false],
    ['route: 1', false],
    [null, false],
  ])('%j: %s', (value, expected) => {
    expect(A_SCENARIO.isIn(value)).toBe(expected);
  });

  it.each([
    ['scenario: x\nsites: [', true],
    ['{ "scenario": "x", ', true],
    ['pulse lines:\n  - [', true],
    ['route:x: [', false],
    ['  sites: [', false],
    ['password: route: [', false],
  ])('also where YAML cannot read it to the end: %j, %s', (text, expected) => {
    expect(A_SCENARIO.isInText(text)).toBe(expected);
  });

  it('and what-ifs by their changes', () => {
    expect(WHAT_IFS.isIn({ a: { chnges: [] } })).toBe(true);
    expect(WHAT_IFS.isIn({ a: 2, password: 'x' })).toBe(false);
    expect(WHAT_IFS.isInText('a: { changes: [')).toBe(true);
    expect(WHAT_IFS.isInText('a: { password: [')).toBe(false);
  });
});
