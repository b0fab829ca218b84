import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/read.js';
import { changedTo } from '../../../src/study/reliefs/changes.js';
import { byArithmetic } from '../../../src/study/reliefs/groups/by-load.js';
import { grouped } from '../../../src/study/reliefs/groups/together.js';
import { reliefsOf } from '../../../src/study/reliefs/small.js';

/** Invented. The booth takes an hour a unit, 45 and 15 min; each of the benches half an hour. */
const YAML = `
scenario: a booth and ten benches
programme: { quantity: 20, rate: { per day: 8 }, start: 2027-04-05 }
calendars: { days: { hours: ["07:00-15:00"] }, nights: { hours: ["07:00-15:00"] } }
sites:
  a:
    calendar: days
    crews: { sprayers: 1 }
    stations:
      ${Array.from({ length: 9 }, (_, b) => `bench ${b}: { buffer: 1, calendar: nights }`).join('\n      ')}
      booth: { buffer: 1 }
route:
${Array.from({ length: 9 }, (_, b) => `  - { step: build ${b}, at: bench ${b}, work: 30 min }`).join('\n')}
  - { step: coat, at: booth, work: 45 min, crew: { sprayers: 1 } }
  - { step: polish, at: booth, work: 15 min }
`;
const { scenario } = readScenario(YAML, 'booth.yaml', () => '');
if (scenario === undefined) throw new Error('expected a scenario, got problems');
const base = changedTo(scenario),
  bears = byArithmetic(scenario, base.model);

describe('how much more of a thing may bring, by arithmetic', () => {
  it.each([
    ['station', 'booth', '', 1],
    ['station', 'bench 3', '', 0.5 ** 8],
    ['crew', 'sprayers', 'a', 0.75 ** 8],
    ['room', 'booth', '', 0.1],
    ['room', 'bench 3', '', 0.1 * 0.5 ** 8],
    // Of the time at the booth three quarters.
    ['step', 'coat', 'a', 0.75],
    ['step', 'polish', 'a', 0.25],
    ['step', 'build 3', 'a', 0.5 ** 8],
    // Of what works by it the greatest.
    ['hours', 'days', '', 1],
    ['hours', 'nights', '', 0.5 ** 8],
    ['lane', 'nowhere', '', 0],
  ] as const)('%s %s %s: %f', (kind, name, site, share) => {
    expect(bears({ kind, name, site })).toBeCloseTo(share, 9);
  });

  it('puts those that may bring most in one group, whatever their kind', () => {
    const all = reliefsOf(scenario).map((of) => ({ ...changedTo(of.change(scenario)), of })),
      groups = grouped(all, ({ of }) => of.kind !== 'overtime', bears),
      texts = groups.map((group) => group.map((i) => all[i].of.text));
    expect(texts[0].slice(0, 3)).toEqual([
      'one place more at booth',
      '10 % off the work of coat',
      '10 % off the work of polish',
    ]);
    // Each once; alone what cannot be tried with others.
    expect(groups.flat().sort((a, b) => a - b)).toEqual([...all.keys()]);
    expect(texts.filter(({ length }) => length === 1)).toHaveLength(2);
    // Of equal ones in the order of kinds and of the route.
    expect(texts.at(-3)).toEqual([...texts.at(-3)!].sort((a, b) => a.localeCompare(b)));
  });
});
