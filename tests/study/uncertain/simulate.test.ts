import { describe, expect, it } from 'vitest';
import { readScenario, scenarioData } from '../../../src/scenario/read.js';
import { answerOf, type FixedDesign } from '../../../src/study/run/fixed-design.js';
import { simulateDesign } from '../../../src/study/simulate/design.js';
import { simulateStudy } from '../../../src/study/simulate/simulate.js';
import { inputsOf } from '../../../src/study/uncertain/inputs.js';

const text = (basis: string): string => `
scenario: two steps
programme: { start: 2027-03-01, quantity: 24, rate: { per day: 8 } }
calendars: { days: { hours: ["06:00-14:00"] } }
sites:
  works:
    calendar: days
    crews: { fitters: { headcount: { value: 2, basis: guess } } }
    stations: { bay: { places: 1 }, test: { places: 1 } }
defects: { leak: {} }
outages: [{ stations: [test], from: 2027-03-02, to: 2027-03-02 }]
route:
  - step: build
    at: bay
    work: { mean: 42 min, cv: 0.3${basis === '' ? '' : `, basis: ${basis}`} }
    creates: { leak: ${basis === '' ? '10 %' : '{ value: 10 %, basis: { measured: 60, found: 6 } }'} }
  - step: look
    at: test
    work: { value: 20 min, basis: measured }
    finds: { leak: { chance: 100 %, repair: 30 min } }
`;
const MEASURED = text('{ measured: 12 }');
const asked = (of: string, replications = 8) => {
  const noFile = (): string => '';
  return {
    ...{
      scenario: readScenario(of, 'two.yaml', noFile).scenario!,
      data: scenarioData(of, 'two.yaml', noFile),
    },
    ...{ file: 'two.yaml', seed: '1', level: 0.95, replications, workers: 1 },
  };
};
const uncertain = (of: string, replications?: number) =>
  ({ ...asked(of, replications), inputs: 'uncertain' }) as const;

describe('what is drawn', () => {
  it('is what says how often it was measured; of all else it is told why not', () => {
    const { scenario, data } = asked(MEASURED);
    const { drawn, left } = inputsOf(scenario, data);
    expect(drawn.map(({ path, n, of }) => [path, n, of.kind])).toEqual([
      ['route[0].work', 12, 'time'],
      ['route[0].creates.leak', 60, 'chance'],
    ]);
    expect(left.map(({ path, why }) => [path, why])).toEqual([
      ['sites.works.crews.fitters.headcount', 'guess'],
      ['route[1].work', 'number of values not said'],
    ]);
  });
});

describe('inputs drawn anew', () => {
  it('are the same in two replications that follow each other, and others in the next two', () => {
    const [base, without] = simulateDesign(uncertain(MEASURED)).variants;
    const ofBase = [1, 2, 3].map((r) => base.drawn!(r));
    expect(ofBase[0].model).toBe(ofBase[1].model);
    expect(ofBase.map(({ key }) => key)).toEqual(['base, draw 1', 'base, draw 1', 'base, draw 2']);
    expect(ofBase[0].model.draws).not.toEqual(ofBase[2].model.draws);
    // A build without its outage is set against the same draw.
    expect(without.drawn!(3).model.draws).toEqual(ofBase[2].model.draws);
    expect(without.drawn!(3).model.outages.count).toBe(0);
  });

  it('give the same results on any number of workers', async () => {
    const one = await simulateStudy(uncertain(MEASURED)),
      two = await simulateStudy({ ...uncertain(MEASURED), workers: 2 });
    expect(JSON.stringify(two)).toBe(JSON.stringify(one));
    expect(one.inputs).toMatchObject({
      draws: 4,
      measures: [{ id: 'shipped', pairs: 4 }, {}, { id: 'last unit' }],
    });
    expect(one.inputs!.measures.every(({ low, mean, high }) => low! < mean && mean < high!)).toBe(true);
  });

  it('with one more input leave the draws of the others as they were', () => {
    const of = (measured: string) => simulateDesign(uncertain(measured)).variants[0].drawn!(1).model,
      work = ({ draws }: ReturnType<typeof of>) => draws.find(({ name }) => name.startsWith('build/'));
    const other = MEASURED.replace('{ value: 10 %, basis: { measured: 60, found: 6 } }', '10 %');
    expect(work(of(other))).toEqual(work(of(MEASURED)));
  });

  it('change what the replications hang on, for journals and shards', () => {
    const identity = (of: FixedDesign<never, unknown>['identity']) => JSON.stringify(of);
    const first = identity(simulateDesign(uncertain(MEASURED)).identity);
    expect(identity(simulateDesign(asked(MEASURED)).identity)).not.toBe(first);
    expect(
      identity(simulateDesign(uncertain(MEASURED.replace('measured: 12', 'measured: 13'))).identity),
    ).not.toBe(first);
  });

  it('are none where nothing was measured: then all else is as without them', async () => {
    const plain = text(''),
      { results } = await answerOf(simulateDesign(asked(plain)), { workers: 1 }),
      { inputs, ...others } = (await answerOf(simulateDesign(uncertain(plain)), { workers: 1 })).results;
    expect(JSON.stringify(others)).toBe(JSON.stringify(results));
    expect(inputs).toMatchObject({ drawn: [], left: [{ why: 'guess' }, {}], measures: [] });
  });

  it('need an even number of replications', () => {
    expect(() => simulateDesign(uncertain(MEASURED, 7))).toThrow(
      'replications: expected an even number, as each draw of the inputs is used in two, got 7',
    );
  });
});
