import { describe, expect, it } from 'vitest';
import { sayProblem } from '../../../src/scenario/file/problem.js';
import { readScenario } from '../../../src/scenario/read.js';

const scenario = (find: string, stripe = ''): string => `
scenario: three plants
programme: { start: 2027-03-01, arrivals: 1 h, quantity: 5, options: { stripe: 30 % } }
defects: { runs: {}, dirt: {} }
sites:
  mill: { stations: { saw: {}, plane: {} } }
  paint shop: { stations: { booth: {} } }
  final plant: { stations: { bay: {}, gate: {} } }
lanes:
  to paint: { from: mill, to: paint shop, trucks: 1, capacity: 1, drive: 1 h }
  straight on: { from: mill, to: final plant, trucks: 1, capacity: 1, drive: 1 h }
  to final: { from: paint shop, to: final plant, trucks: 1, capacity: 1, drive: 1 h }
  home: { from: final plant, to: mill, trucks: 1, capacity: 1, drive: 1 h }
route:
  - { step: cut, at: saw, work: 9 min, creates: { dirt: 9 % } }
  - { lane: to paint${stripe} }
  - { step: paint, at: booth, work: 9 min, creates: { runs: 9 % }${stripe} }
  - { lane: to final${stripe} }
${stripe === '' ? '' : '  - { lane: straight on, when: { stripe: no } }'}
  - { step: fit, at: bay, work: 9 min, finds: { dirt: { chance: 50 %, repair: 9 min } } }
  - { step: look, at: gate, work: 9 min, ${find} }
`;
const said = (find: string, stripe?: string): string[] =>
  (readScenario(scenario(find, stripe), 'plants.yaml', () => '').problems ?? []).map((problem) =>
    sayProblem(problem).replace(/^plants.yaml:\d+:\d+ route\[\d\]\./, ''),
  );
const back = (to: string): string => `finds: { runs: { chance: 90 %, back to: ${to} } }`;

describe('a send-back to another site', () => {
  it('is read where lanes lead there, one after the other', () => {
    expect(said(back('cut'))).toEqual([]);
    // Home to the mill, and from there to the paint shop.
    expect(said(back('paint'))).toEqual([]);
    expect(said(back('paint, by: [home, to paint]'))).toEqual([]);
  });

  it('says which lane is missing', () => {
    const text = scenario(back('paint')).replace(/ {2}home: .*\n/, '');
    expect((readScenario(text, 'plants.yaml', () => '').problems ?? []).map(sayProblem)).toEqual([
      'plants.yaml:20:82 route[5].finds.runs.back to: a step in site final plant, where the unit is, or a lane that leads back: one from final plant to paint shop, or several one after the other; none does; got "paint", in site paint shop',
    ]);
  });

  it.each([
    ['paint, by: hme', 'finds.runs.by: no lane of this name; got "hme"; did you mean "home"?'],
    [
      'paint, by: []',
      'finds.runs.by: the name of a lane, or a list of them, at least one; got an empty list',
    ],
    ['paint, by: 3', 'finds.runs.by: the name of a lane, or a list of them; got 3'],
    [
      'paint, by: to paint',
      'finds.runs.by: a lane that starts in site final plant, where the unit is then; got "to paint", from mill',
    ],
    [
      'paint, by: home',
      'finds.runs.by: lanes that end in site paint shop, where the step is; got "home", to mill',
    ],
    [
      'fit, by: home',
      'finds.runs.by: lanes only to a step at another site; to this one the unit goes without; got "home"',
    ],
  ])('refuses %s', (to, expected) => {
    expect(said(back(to))).toEqual([expected]);
  });

  it('refuses lanes of a find that sends nothing back', () => {
    expect(said('finds: { runs: { chance: 90 %, repair: 5 min, by: home } }')).toEqual([
      'finds.runs.by: by only together with back to; got "home"',
    ]);
  });

  it('refuses two ways from one step to the same', () => {
    expect(
      said(
        'finds: { runs: { chance: 90 %, back to: paint }, dirt: { chance: 90 %, back to: paint, by: [home, straight on, home, to paint] } }',
      ),
    ).toEqual([
      'finds.dirt.by: the lanes of the other find that sends back from this step to the same: "home", "to paint"; got "home", "straight on", "home", "to paint"',
    ]);
  });

  it('refuses a site from which the route of some units does not lead here again', () => {
    expect(said(back('paint'), ', when: stripe')).toEqual([
      'finds.runs.back to: a step at a site from which the route leads here again for every unit; it leads by lane "straight on" for one with stripe: no; got "paint", in site paint shop',
    ]);
    expect(said(back('cut'), ', when: stripe')).toEqual([]);
  });
});
