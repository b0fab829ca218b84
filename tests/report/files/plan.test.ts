import { describe, expect, it } from 'vitest';
import { type PlannedChange, planFile, wayFile } from '../../../src/report/files/plan.js';
import { digest } from '../../../src/scenario/digest.js';
import { readScenario } from '../../../src/scenario/read.js';
import { readWhatIfs } from '../../../src/scenario/what-ifs.js';

/** Names that YAML or the path of an edit might take for something else. */
const ODD = [
  'second booth',
  'a.made',
  'a',
  'a: b',
  'it\'s "half" done',
  'room [2]',
  'x]y',
  'x',
  '# none',
  'yes',
  '12',
  '2027-12-01',
  '- {a}, *b & !c | > % @ `',
  'größer, 日本',
  'remove',
  `long ${'word '.repeat(14)}end`,
];
const BASE = "odd 'line': 50 %.yaml";
/** All numbers are invented. */
const base = `
scenario: odd
note: a remark of the scenario
programme: { start: 2028-01-31, quantity: 40, rate: { per day: 2 } }
sites: { hall: { stations: { ${ODD.map((_, i) => `s${i}: { buffer: 1 }`).join(', ')} } } }
route: [${ODD.map((_, i) => `{ step: t${i}, at: s${i}, work: 5 min }`).join(', ')}]
costs:
  currency: EUR
  changes:
${ODD.map((name, i) => `    ${JSON.stringify(name)}: { relief: space, of: s${i}, day: ${i} }\n`).join('')}`;

const read = (text: string, file: string) =>
  readScenario(text, file, (path) => {
    if (path !== BASE) throw new Error(`no such file: ${path}`);
    return base;
  });
const planned: readonly PlannedChange[] = ODD.map((name, i) => ({
  name,
  times: 1 + (i % 3),
  from: i % 2 === 0 ? undefined : `2028-0${3 + (i % 4)}-01`,
}));

describe('a plan', () => {
  const { scenario, problems } = read(planFile(BASE, planned), 'plan.yaml');
  it('is a scenario file beside the other one, that makes its changes whatever they are called', () => {
    expect(problems).toBeUndefined();
    const made = new Map(scenario!.costs!.changes!.map((each) => [each.name, each.made]));
    expect(made).toEqual(new Map(planned.map(({ name, ...making }) => [name, making])));
    const [until, stage] = [scenario!.before![0].until, scenario!.before![0].scenario];
    expect(until).toBe('2028-04-01');
    for (const [i, { times, from }] of planned.entries()) {
      expect(scenario!.sites['hall'].stations[`s${i}`].buffer).toBe(1 + times);
      expect(stage.sites['hall'].stations[`s${i}`].buffer).toBe(from === undefined ? 1 + times : 1);
    }
  });
  it('is the other scenario in all else, by its name, its remark and its digest', () => {
    const none = read(planFile(BASE, []), 'plan.yaml').scenario!,
      other = read(base, BASE).scenario!;
    expect([none.name, none.note]).toEqual(['odd', 'a remark of the scenario']);
    expect(digest(none)).toBe(digest(other));
  });
  it('gives the scenario that the same what-if gives', () => {
    const { whatIfs } = readWhatIfs(wayFile([planned]), 'way.yaml', { text: base, file: BASE }, () => '');
    expect(whatIfs!.map((each) => digest(each.scenario))).toEqual([digest(scenario!)]);
  });
  it('reads well', () => {
    expect(
      planFile('line.yaml', [
        { name: 'second booth', times: 1, from: '2028-03-01' },
        { name: 'a painter more', times: 1, from: undefined },
        { name: 'shelf', times: 3, from: '2028-02-14' },
      ]),
    ).toBe(
      `include:
  - line.yaml
costs:
  changes:
    second booth:
      made: 2028-03-01
    a painter more:
      made: yes
    shelf:
      made:
        times: 3
        from: 2028-02-14
`,
    );
  });
});

describe('a way', () => {
  it('is a file of what-ifs, each with what the steps before it make', () => {
    const way = wayFile([...planned.map((each) => [each]), planned.slice(0, 2)]),
      { whatIfs, problems } = readWhatIfs(way, 'way.yaml', { text: base, file: BASE }, () => '');
    expect(problems).toBeUndefined();
    expect(whatIfs!.map(({ name }) => name)).toEqual([
      ...ODD.map((name, i) => `${i + 1}: ${name}`),
      `${ODD.length + 1}: second booth and a.made`,
    ]);
    whatIfs!.forEach(({ scenario }, i) => {
      const made = new Map(scenario.costs!.changes!.map((each) => [each.name, each.made]));
      planned.forEach(({ name, times, from }, p) => {
        const again = i === ODD.length && p < 2 ? 2 : 1;
        expect(made.get(name)).toEqual(p <= i ? { times: again * times, from } : undefined);
      });
    });
  });
});
