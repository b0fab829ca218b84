import type { BufferResults, LayoutResult } from '../../study/buffers/results.js';
import type { Estimate } from '../../study/simulate/results.js';
import { placesCurve } from '../charts/studies/buffers-curve.js';
import { placesLayout } from '../charts/studies/buffers-layout.js';
import { csv } from './csv.js';
import { bounds, count, intervalName, mean, number, short } from '../../study/format.js';
import { renderPage, type Picture } from '../page/page.js';
import { studyFiles } from './study-files.js';

/** Every file of a report of `buffers`, by name: results.json, two pictures, report.html and layouts.csv. */
export async function buffersFiles(results: BufferResults): Promise<Map<string, string | Buffer>> {
  return (
    await studyFiles(results, { '01-throughput-by-places': placesCurve, '02-places': placesLayout }, page)
  ).set('layouts.csv', layoutsCsv(results));
}

/**
 * One row a layout: what it is, places in all, throughput with its interval, then the places of every spot.
 */
function layoutsCsv({ chosen, present, selection, curve, spots }: BufferResults): string {
  const row = (what: string, { total, rate, places }: LayoutResult) => [
    what,
    total,
    rate.mean,
    rate.low,
    rate.high,
    rate.n,
    ...places,
  ];
  return csv(
    [
      'layout',
      'places',
      'rate_mean',
      'rate_low',
      'rate_high',
      'replications',
      ...spots.map(({ name }) => `places at ${name}`),
    ],
    [
      row('chosen', chosen),
      row('as it is', present),
      ...selection.others.map((other) => row(other.standing, other)),
      ...curve.map((point) => row('curve', point)),
    ],
  );
}

function page(results: BufferResults, pictures: readonly Picture[]): string {
  const {
    scenario,
    chosen,
    present,
    gain,
    unit,
    level,
    spots,
    selection,
    curve,
    currency,
    seed,
    replications,
    freshReplications,
    program,
    version,
    over,
    zone,
  } = results;
  const figure = (what: string, rate: Estimate) => ({
    what,
    value: mean(rate),
    interval: `${intervalName(level)} ${bounds(rate)}, ${count(rate.n, 'replication')}`,
  });
  const layoutRow = (what: string, { total, rate, places }: LayoutResult): string[] => [
    what,
    String(total),
    short(rate),
    places.join(' '),
  ];
  return renderPage({
    scenario: scenario.name,
    answer: results.answer.sentence,
    headline: [
      figure(`Chosen layout, ${unit}`, chosen.rate),
      figure(`Layout as it is, ${unit}`, present.rate),
      figure('Chosen against as it is', gain.difference),
    ],
    pictures,
    findings: [
      selection.settled
        ? `Among the best layouts of the search the one chosen is within ${number(100 * zone)} % of ` +
          `the best, with ${number(100 * level)} % confidence.`
        : 'The selection among the best layouts was not settled after ' +
          `${count(selection.rounds, 'round')}; the best mean was taken.`,
      ...selection.others
        .filter(({ standing }) => standing === 'equal')
        .map((other) => `As good: ${spots.map((spot, s) => `${spot.name} ${other.places[s]}`).join(', ')}.`),
    ],
    costsAndDates: [
      chosen.costPerDay === null || present.costPerDay === null
        ? 'Cost: the scenario gives a waiting place no price.'
        : `Floor for these places: ${number(chosen.costPerDay)} ${currency} a day, ` +
          `${number(present.costPerDay)} as it is.`,
    ],
    assumptions: [
      ...(scenario.note === null ? [] : [`The scenario says of itself: ${scenario.note}`]),
      `Throughput is counted over ${over}. A replication that ends in gridlock counts as nothing shipped.`,
      'The search looks at moves of one place: a better layout that no such move leads to would ' +
        'not be seen. The confidence is that of the choice among the best few found.',
      'Everything but the places stays as the scenario has it. Whether there is room on the floor ' +
        'is not known to it.',
    ],
    facts: [
      ['Scenario', scenario.name],
      ['File', scenario.file],
      ['Digest', scenario.digest],
      ['Seed', seed],
      ['Replications', `${replications} in the search, ${freshReplications} fresh ones after it`],
      ['Layouts tried', String(results.layoutsTried)],
      ['Program', `rateproof ${program}, results version ${version}`],
    ],
    tables: [
      {
        id: 'places',
        title: 'Places',
        note: 'Waiting places of each buffer and bank.',
        head: ['Spot', 'As it is', 'Chosen'],
        rows: spots.map((spot) => [spot.name, String(spot.present), String(spot.chosen)]),
      },
      {
        id: 'layouts',
        title: 'Layouts compared',
        note:
          `${unit}, in brackets ${intervalName(level)}, ` +
          `${count(freshReplications, 'fresh replication')}; places in the order of the table above.`,
        head: ['Layout', 'Places', 'Throughput', 'Places by spot'],
        rows: [
          layoutRow('chosen', chosen),
          layoutRow('as it is', present),
          ...selection.others.map((other) => layoutRow(other.standing, other)),
        ],
      },
      {
        id: 'curve',
        title: 'Throughput by places',
        note:
          `Best found for each number of places, ${unit}, in brackets ${intervalName(level)}; ` +
          `${count(replications, 'replication')} of the search.`,
        head: ['Places', 'Throughput', 'Places by spot'],
        rows: curve.map((point) => [String(point.total), short(point.rate), point.places.join(' ')]),
      },
    ],
    more: 'All of it, and more, is in results.json and layouts.csv beside this page.',
  });
}
