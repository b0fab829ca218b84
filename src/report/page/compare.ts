import type { CompareResults } from '../../study/compare/results.js';
import { bounds, count, intervalName, mean, number, short, signed } from '../../study/format.js';
import { renderPage, type Picture } from './page.js';
import type { PageTable } from '../tables/overall.js';

/** The page of a comparison: one HTML file that needs no other. */
export function comparePage(results: CompareResults, pictures: readonly Picture[]): string {
  const { base, whatIfs, measures, scenario, window, level, differenceLevel, replications } = results;
  const throughput = base.values[0]!.value,
    ci = intervalName(differenceLevel),
    pairs = count(replications, 'replication');
  const best = whatIfs
    .map(({ name, compared }) => ({ name, ...compared[0]! }))
    .sort((a, b) => b.difference.mean - a.difference.mean)[0]!;
  const costs = measures.findIndex(({ id }) => id === 'cost'),
    last = measures.findIndex(({ id }) => id === 'last unit');
  const lines = (m: number): string[] =>
    m < 0
      ? []
      : whatIfs.map(({ name, compared }) => {
          const { difference, words } = compared[m]!;
          return (
            `${name}, ${measures[m]!.name}: ${signed(difference)} ${measures[m]!.unit} (${ci} ` +
            `${bounds(difference)}), ${words}.`
          );
        });
  return renderPage({
    scenario: `${scenario.name}: base and ${count(whatIfs.length, 'what-if')}`,
    answer: results.answer,
    headline: [
      {
        what: 'Base, units a working day',
        value: mean(throughput),
        interval: `${intervalName(level)} ${bounds(throughput)}, ${pairs}`,
      },
      {
        what: `${best.name}, more a working day`,
        value: signed(best.difference),
        interval: `${ci} ${bounds(best.difference)}, ${count(best.difference.n, 'pair')}; ${best.words}`,
      },
    ],
    pictures,
    findings: results.findings.length === 0 ? ['No variant came to a standstill.'] : results.findings,
    costsAndDates: [
      ...lines(last),
      ...lines(costs),
      ...(costs < 0 ? ['Cost: the scenario has no prices.'] : []),
    ],
    assumptions: [
      ...(scenario.note === null ? [] : [`The scenario says of itself: ${scenario.note}`]),
      'Each what-if is the scenario with the changes named and nothing else: what the changes ' +
        'cost, how long they take and whether they are allowed is not asked.',
      'Replication r of each variant meets the same chance (common random numbers), so differences ' +
        `are paired. Intervals of differences have level ${ci.replace(' CI', '')}: in each measure ` +
        `all ${count(whatIfs.length, 'what-if')} hold together with ${number(level * 100)} % ` +
        '(Bonferroni). Between measures nothing is corrected.',
      'No difference seen is no proof that there is none: the number says how large one may still be.',
      window === null
        ? "Throughput is that of the whole run, in working days of the first station's site."
        : `Throughput is judged from ${window.from} to ${window.to}, the weeks in which the base is at ` +
          'its highest rate, in working days of the base.',
    ],
    facts: [
      ['Scenario', scenario.name],
      ['File', scenario.file],
      ['What-ifs', results.whatIfsFile],
      ['Digest', scenario.digest],
      ['Seed', results.seed],
      ['Replications', `${replications} of each variant`],
      ['Program', `rateproof ${results.program}, results version ${results.version}`],
    ],
    tables: [changesTable(results), ...measures.map((_, m) => measureTable(results, m))],
    more: 'All of it, and more, is in results.json, differences.csv and runs.csv beside this page.',
  });
}

function changesTable({ whatIfs }: CompareResults): PageTable {
  return {
    id: 'changes',
    title: 'What is changed',
    note: 'Paths and values as in the files.',
    head: ['what-if', 'path', 'in the base', 'in the what-if', 'note'],
    rows: whatIfs.flatMap(({ name, note, changes }) =>
      changes.map(({ path, before, after }, i) => [
        name,
        path,
        before ?? 'not there',
        after ?? 'taken out',
        i === 0 ? (note ?? '') : '',
      ]),
    ),
  };
}

function measureTable(
  { measures, base, whatIfs, level, differenceLevel }: CompareResults,
  m: number,
): PageTable {
  const { id, name, unit, better } = measures[m]!,
    { value } = base.values[m]!;
  return {
    id: `measure-${id.replaceAll(' ', '-')}`,
    title: `${name}, ${unit}`,
    note:
      `${better} is better. Base: ${short(value)}. Values in brackets: ${intervalName(level)}; ` +
      `differences: ${intervalName(differenceLevel)}. Pairing: so many times as many replications ` +
      'would be needed without common random numbers.',
    head: ['what-if', 'value', 'difference to the base', 'pairs', 'verdict', 'pairing'],
    rows: whatIfs.map(({ name: whatIf, compared }) => {
      const { value: own, difference, words, pairingGain } = compared[m]!;
      return [
        whatIf,
        short(own),
        `${signed(difference)} (${bounds(difference)})`,
        String(difference.n),
        words,
        pairingGain === null ? '' : number(pairingGain),
      ];
    }),
  };
}
