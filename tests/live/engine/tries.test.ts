import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { Told } from '../../../src/live/engine/messages.js';
import { Tries } from '../../../src/live/engine/tries.js';
import { stableJson } from '../../../src/report/json.js';
import type { TryIt } from '../../../src/report/page/try-it.js';
import { withWarmUp } from '../../../src/scenario/data.js';
import { setLevers } from '../../../src/scenario/levers.js';
import { readScenario, scenarioData } from '../../../src/scenario/read.js';
import { readWhatIfs } from '../../../src/scenario/what-ifs.js';
import { compareDesign } from '../../../src/study/compare/design.js';
import { answerOf } from '../../../src/study/run/fixed-design.js';
import type { Results } from '../../../src/study/simulate/results.js';
import { simulateStudy } from '../../../src/study/simulate/simulate.js';

const STARTER = readFileSync(
    fileURLToPath(new URL('../../../scenarios/starter.yaml', import.meta.url)),
    'utf8',
  ),
  LEVERS = `
levers:
  places in the fitting bay: { change: sites.workshop.stations.fitting bay.places, from: 1, to: 4 }
  fitters: { change: sites.workshop.crews.fitters, from: 1, to: 8 }
`;
const FILE = 'starter.yaml',
  TEXT = STARTER + LEVERS,
  none = (): string => {
    throw new Error('no such file');
  };
const ASKED = { file: FILE, replications: 6, seed: '1', level: 0.95, workers: 1 };

const scenarioOf = (text: string) => {
  const { scenario, problems } = readScenario(text, FILE, none);
  if (scenario === undefined) throw new Error(JSON.stringify(problems));
  return scenario;
};
const scenario = scenarioOf(TEXT);
const report = await simulateStudy({ scenario, ...ASKED });
/** As it comes out of the page. */
const data = JSON.parse(JSON.stringify(scenarioData(TEXT, FILE, none))) as Omit<TryIt, 'levers'>,
  tryIt: TryIt = { ...data, levers: setLevers(data.value, scenario.levers) },
  [{ now: places }, { now: fitters }] = tryIt.levers as [TryIt['levers'][0], TryIt['levers'][0]];

async function tried(numbers: readonly number[], it = tryIt, of = report): Promise<Told[]> {
  const all: Told[] = [],
    tries = new Tries(it, JSON.parse(stableJson(of)) as Results, (told) => all.push(told));
  await tries.with(7, numbers, new AbortController().signal);
  return all;
}
const last = <Kind extends Told['kind']>(all: readonly Told[], kind: Kind): Extract<Told, { kind: Kind }> =>
  all.findLast((each): each is Extract<Told, { kind: Kind }> => each.kind === kind)!;

describe('a build tried in the page', () => {
  it('with untouched levers is the report, digit for digit, and no measure differs', async () => {
    const all = await tried([places, fitters]);
    expect(last(all, 'agrees')).toEqual({ kind: 'agrees', done: 6, same: 6 });
    expect(stableJson(last(all, 'results').results)).toBe(stableJson(report));
    for (const { difference } of last(all, 'seen').rows)
      expect([difference.low, difference.high]).toEqual([0, 0]);
  });

  it('differs by what `compare` says of the same change kept as a what-if, and is what `simulate` says of it', async () => {
    const all = await tried([places, fitters - 1]),
      changed = scenarioOf(TEXT.replace(/fitters: \d+/, `fitters: ${fitters - 1}`));
    const { whatIfs = [] } = readWhatIfs(
      `one fewer: { changes: { sites.workshop.crews.fitters: ${fitters - 1} } }`,
      'what-ifs.yaml',
      { text: TEXT, file: FILE },
      none,
    );
    const design = compareDesign({ scenario, ...ASKED, whatIfs, whatIfsFile: 'what-ifs.yaml' }),
      there = (await answerOf(design, { workers: 1 })).results.whatIfs[0]!.compared;
    const here = last(all, 'seen').rows;
    expect(here.map(({ measure, value, difference }) => [measure, value.mean, difference.mean])).toEqual(
      there.map(({ measure, value, difference }) => [measure, value.mean, difference.mean]),
    );
    expect(here.some(({ difference }) => difference.mean !== 0)).toBe(true);
    expect(stableJson(last(all, 'results').results)).toBe(
      stableJson(await simulateStudy({ scenario: changed, ...ASKED })),
    );
  });

  it('in a steady state has the warm-up that was found for the report', async () => {
    const text = TEXT.replace(
        /programme:.*(\n {2}.*)*/,
        'programme: { arrivals: 2 h, length: 300 h, warm up: mser-5 }',
      ),
      steady = withWarmUp(scenarioOf(text), 1200),
      of = await simulateStudy({ scenario: steady, ...ASKED }),
      { value, files } = scenarioData(text, FILE, none),
      all = await tried([places, fitters], { ...tryIt, value, files, warmUpMin: 1200 }, of);
    expect(last(all, 'agrees')).toEqual({ kind: 'agrees', done: 6, same: 6 });
    expect(stableJson(last(all, 'results').results)).toBe(stableJson(of));
  });

  it('is told after five replications, and at the end after all', async () => {
    const all = await tried([places + 1, fitters]);
    expect(all.flatMap((each) => (each.kind === 'seen' ? [each.done] : []))).toEqual([5, 6]);
  });

  it('that cannot be is refused with the reason, and nothing is run', async () => {
    const all = await tried([1.5, fitters]);
    expect(all).toEqual([
      {
        kind: 'refused',
        id: 7,
        why: ['sites.workshop.stations.fitting bay.places: expected a whole number from 1 to 1,000,000'],
      },
    ]);
  });

  it('is ended by the word to stop', async () => {
    const stop = new AbortController(),
      all: Told[] = [],
      tries = new Tries(tryIt, report, (told) => {
        all.push(told);
        if (told.kind === 'seen') stop.abort();
      });
    await expect(tries.with(1, [places + 1, fitters], stop.signal)).rejects.toThrow();
    expect(all.filter(({ kind }) => kind === 'results')).toEqual([]);
  });

  it("against digits that are not the report's says of how many builds", async () => {
    const all: Told[] = [],
      runs = report.runs.map((row, i) => (i === 2 ? { ...row, wip: row.wip * (1 + 1e-8) } : row));
    await new Tries(tryIt, { ...report, runs }, (told) => all.push(told)).with(
      1,
      [places, fitters],
      new AbortController().signal,
    );
    expect(last(all, 'agrees')).toEqual({ kind: 'agrees', done: 6, same: 5 });
  });
});
