import { describe, expect, it } from 'vitest';
import { caseRole } from '../../../../src/report/buffers.js';
import { readScenario } from '../../../../src/scenario/read.js';
import { readWhatIfs } from '../../../../src/scenario/what-ifs.js';
import { type BufferOptions, buffersStudy } from '../../../../src/study/buffers/buffers.js';
import { MOST_CASES, spotsOfAll } from '../../../../src/study/buffers/cases/spots-of-all.js';

/** Two hours at each station without chance unless said otherwise. */
const line = (work = '2 h'): string => `
scenario: three stations
programme: { arrivals: saturated, length: 200 h, warm up: 50 h }
costs: { currency: EUR, buffer place: { day: 12 } }
sites: { hall: { stations: { first: {}, second: { buffer: 1 }, third: { buffer: 1 } } } }
route: [{ step: a, at: first, work: ${work} }, { step: b, at: second, work: ${work} }, { step: c, at: third, work: ${work} }]
`;
const CHANCE = '{ exponential: { mean: 1 h } }';

function given(whatIfs: string, text = line()) {
  const read = readWhatIfs(whatIfs, 'what-ifs.yaml', { text, file: 'three.yaml' }, () => '');
  if (read.whatIfs === undefined) throw new Error(JSON.stringify(read.problems));
  return {
    scenario: readScenario(text, 'three.yaml', () => '').scenario!,
    cases: { file: 'what-ifs.yaml', whatIfs: read.whatIfs },
  };
}

const study = (asked: ReturnType<typeof given>, options: Partial<BufferOptions> = {}) =>
  buffersStudy({
    ...asked,
    file: 'x/three.yaml',
    goal: { kind: 'budget', places: 4 },
    replications: 4,
    seed: 'a',
    workers: 1,
    looksAround: false,
    ...options,
  });

describe('the spots of several cases', () => {
  it('must have the places of the scenario in every case: they are what is looked for', () => {
    const { scenario, cases } = given('more: { changes: [{ sites.hall.stations.third.buffer: 3 }] }');
    expect(() => spotsOfAll(scenario, [], cases)).toThrow(
      'cases: expected what-ifs that leave the places at "third" as they are, got 3 in place of 1 in "more"; ' +
        'leave that change out, as places are what is looked for, or name other spots with --at',
    );
    // Those that are not looked for may change.
    expect(spotsOfAll(scenario, ['second'], cases).map(({ name }) => name)).toEqual(['second']);
    const endless = given('endless: { changes: [{ sites.hall.stations.third.buffer: unlimited }] }');
    expect(() => spotsOfAll(endless.scenario, [], endless.cases)).toThrow('got no limited ones in "endless"');
    const gone = given('gone: { changes: [{ route: [{ step: a, at: first, work: 2 h }] }] }');
    expect(() => spotsOfAll(gone.scenario, [], gone.cases)).toThrow(
      'at "second" as they are, got no limited ones in "gone"',
    );
  });
  it('are looked for in so many cases at most', () => {
    const many = Array.from(
        { length: MOST_CASES + 1 },
        (_, i) => `w${i}: { changes: [{ route.a.work: ${i + 3} h }] }`,
      ),
      { scenario, cases } = given(many.join('\n'));
    expect(() => spotsOfAll(scenario, [], cases)).toThrow('expected at most 12 what-ifs, got 13');
    expect(spotsOfAll(scenario, [], { ...cases, whatIfs: cases.whatIfs.slice(1) })).toHaveLength(2);
  });
});

describe('one layout for several cases', { timeout: 60_000 }, () => {
  it('is the same for any number of threads, and is told in the scenario as it is beside the cases', async () => {
    const asked = given(
        'slow end: { changes: [{ route.c.work: { exponential: { mean: 2 h } } }] }',
        line(CHANCE),
      ),
      one = await study(asked);
    expect(await study(asked, { workers: 2 })).toEqual(one);
    const { cases } = one;
    expect(cases!.layouts[0]).toMatchObject({ places: one.chosen.places, worstMore: null, meanMore: null });
    expect(cases!.cases.map(({ name }) => name)).toEqual([null, 'slow end']);
    expect(cases!.cases[0].rate.mean).toBeCloseTo(one.chosen.rate.mean, 12);
    expect(cases!.layouts.flatMap((each) => caseRole(each, cases!).split('; '))).toContain('alone: slow end');
    expect(one.placeByPlace).toBeNull();
  });

  it('has no cases where none are asked for', async () => {
    const { scenario } = given('slow end: { changes: [{ route.c.work: 3 h }] }');
    expect(await study({ scenario, cases: undefined as never })).not.toHaveProperty('cases');
  });

  it('says of a what-if that changes nothing in what is shipped that it goes the same', async () => {
    const asked = given('dearer: { changes: [{ costs.buffer place: { day: 20 } }] }', line(CHANCE)),
      { cases, answer } = await study(asked);
    expect(cases!.cases.map(({ isAsBase }) => isAsBase)).toEqual([false, true]);
    expect(answer.notes).toContain(
      '“dearer” ships the same as the scenario as it is with every layout compared.',
    );
    // It is no other case that may be the weakest.
    expect(answer.sentence).not.toMatch(/it may be/);
    const other = await study(given('slow end: { changes: [{ route.c.work: 3 h }] }', line(CHANCE)));
    expect(other.answer.notes.join()).not.toMatch(/the same as/);
  });

  it('loses nothing where nothing is to be had, and a case that stands still does not choose it', async () => {
    const still = 'still: { changes: [{ route.c.work: 3000 h }] }',
      { cases, answer, chosen } = await study(given(still, line(CHANCE)));
    expect(cases!.cases[1]).toMatchObject({ unlimited: 0, rate: { mean: 0 } });
    expect(cases!.layouts[0]).toMatchObject({ weakest: 0, cases: [{}, { loss: 0 }] });
    expect(chosen.total).toBeGreaterThan(2);
    expect(answer.notes).toContain(
      'No places help in “still”: nothing is shipped there without limits either.',
    );
    const target = await study(given(still, line(CHANCE)), { goal: { kind: 'target', rate: 0.3 } });
    expect(target.answer.verdict).toBe('out of reach');
    // Without a bound of arithmetic it is not reached.
    const share = await study(given(still, line(CHANCE)), {
      goal: { kind: 'share', share: 0.5, of: 'unlimited' },
    });
    expect(share.answer.verdict).toBe('reached');
  });

  it('needs no place where no case has chance', async () => {
    const { answer, chosen, cases } = await study(given('slower: { changes: [{ route.a.work: 4 h }] }'), {
      goal: { kind: 'share', share: 1, of: 'unlimited' },
    });
    expect(chosen.places).toEqual([0, 0]);
    expect(answer.verdict).toBe('reached');
    expect(cases!.cases.map(({ unlimited }) => unlimited)).toEqual([0.5, 0.25]);
    expect(answer.sentence).toBe(
      '0 places reach 100 % of what unlimited places ship in all 2 cases. Against what is asked, units an hour: ' +
        'the scenario as it is 0 (always) and “slower” 0 (always). The scenario as it is would take the same alone.',
    );
  });

  it('is out of reach where arithmetic does not allow the target in one case, and says in which', async () => {
    const { answer } = await study(given('slower: { changes: [{ route.a.work: 4 h }] }'), {
      goal: { kind: 'target', rate: 0.4 },
    });
    expect(answer).toMatchObject({
      verdict: 'out of reach',
      sentence:
        '0.4 units an hour are out of reach of waiting places: arithmetic allows 0.25 (first) in “slower”.',
    });
  });

  it('is not chosen by a case that no layout within the budget helps', async () => {
    const { scenario, cases } = given(
      `
sent back:
  changes:
    - defects: { flaw: {} }
    - route.b.creates: { flaw: 30 % }
    - route.c.finds: { flaw: { chance: 100 %, back to: a } }
`,
      line(CHANCE).replace('first: {}', 'first: { buffer: 1 }'),
    );
    const found = await study({ scenario, cases }, { at: ['second'], goal: { kind: 'budget', places: 8 } }),
      alone = found.cases!.layouts[found.cases!.cases[0].alone];
    // With so few places it stands still in every build; without limits it would not.
    expect(found.cases!.cases[1]).toMatchObject({ rate: { mean: 0 } });
    expect(found.cases!.cases[1].unlimited).toBeGreaterThan(0.3);
    expect(found.chosen.total).toBe(alone.total);
    expect(found.chosen.total).toBeGreaterThan(2);
    expect(found.answer.notes.join(' ')).toMatch(
      /No layout found for the budget ships anything in “sent back”/,
    );
  });
});
