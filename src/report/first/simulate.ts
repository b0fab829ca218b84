import type { ConstraintResult } from '../../study/constraint/results.js';
import { bounds, capital, exact, mean, number, signed } from '../../study/format.js';
import { each, eachWorking } from '../../study/planners-unit.js';
import type { Results } from '../../study/simulate/results.js';
import { type Estimate, mapped } from '../../study/statistics/estimate.js';
import { toldConstraint } from '../constraint.js';
import { between, dateText, type FirstScreen, how, restsOn, roughly, whyText } from './first.js';

export function simulateFirst(results: Results): FirstScreen {
  const { answer, scenario, throughput, rateUnit, assumptions } = results,
    { asked, held, verdict } = answer,
    shipped = held ?? mapped(throughput.perDay, (perDay) => perDay * rateUnit.workingDays),
    a = each(rateUnit),
    rate = `${roughly(shipped, asked)} ${a}`,
    found = toldConstraint(results);
  return {
    question:
      asked === null
        ? `How many units does “${scenario.name}” ship?`
        : `Does “${scenario.name}” ship ${exact(asked)} ${eachWorking(rateUnit)}?`,
    answer: {
      holds: `Yes, it holds: ${rate} shipped.`,
      'falls short': `No. Expect ${rate}, not ${asked === null ? '' : exact(asked)}.`,
      'not settled': `Not settled: ${rate} in what was tried.`,
      'no rate asked': `It ships ${rate}.`,
    }[verdict],
    sure: `On average ${between(shipped)} ${a} (${how(shipped)}).${keptUp(results)}`,
    why: found === null ? null : whyText(found),
    toDo: toDo(found, asked, shipped, results),
    whenAndCost: [...dates(results), ...cost(results)],
    rests: restsOn(assumptions),
  };
}

function keptUp({ answer: { keptUp: seen } }: Results): string {
  if (seen === null) return '';
  const [some, all] = [exact(seen.count), exact(seen.n)];
  const who = seen.count === 0 ? 'None' : seen.count === seen.n ? 'All' : some;
  return ` ${who} of ${all} builds keep up with it.`;
}

function toDo(
  found: ConstraintResult | null,
  asked: number | null,
  shipped: Estimate,
  results: Results,
): string {
  const { answer, scenario, rateUnit } = results,
    file = scenario.file;
  if (answer.verdict === 'holds') return `To see how much more it would hold: rateproof rate ${file}.`;
  if (answer.verdict === 'not settled')
    return `Run more of it: rateproof simulate ${file} --replications ${4 * results.replications}.`;
  const ask = `rateproof reliefs ${file} tries all there is to change, with gains and costs.`;
  if (found?.culprit == null || asked === null || rateUnit.per === 'week') return `What helps: ${ask}`;
  const { what, gain: more } = found.culprit,
    missing = number(Number((asked - shipped.mean).toPrecision(2))),
    isTooLittle = more.high !== null && shipped.high !== null && shipped.high + more.high < asked;
  return (
    `${capital(what)} brings ${signed(more)} of the ${missing} a day that are missing` +
    `${isTooLittle ? ', not enough alone' : ''}; its price is not in this. ${ask}`
  );
}

function dates({ lastUnit, programme, plan }: Results): string[] {
  const [half, most] = [0.5, 0.8].map((p) => lastUnit.find((one) => one.p === p)?.date ?? null),
    planned = plan === null ? null : lastDue(plan);
  if (programme.kind !== 'programme' || half == null) return [];
  return [
    `Last unit out by ${dateText(half)} in half of the builds` +
      (most == null ? '' : `, by ${dateText(most)} in four of five`) +
      (planned === null ? '.' : `; the plan says by ${dateText(planned)}.`),
  ];
}

/** The end of the first week by which the plan has them all due. */
function lastDue({ due, ends }: NonNullable<Results['plan']>): string | null {
  const all = due?.at(-1);
  return due === null || all === undefined || all === 0 ? null : (ends[due.indexOf(all)] ?? null);
}

function cost({ costs }: Results): string[] {
  if (costs === null) return ['The scenario gives no prices.'];
  const { perUnit, rework, currency } = costs;
  return [
    `A unit costs ${mean(perUnit)} ${currency} (${bounds(perUnit)}), ${mean(rework.costPerUnit)} of it ` +
      'for rework.',
  ];
}
