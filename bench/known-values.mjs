// What the reference line is known to do, and whether runs of it do that. The first six values come from 24
// replications each of independently written programs in three languages. The others hold whatever the work
// times are: the utilisation law, busy share = rate x work, and the forced flow law, visits a unit (Denning &
// Buzen 1978, ACM Computing Surveys 10(3), 225-261); and Little's law (Little 1961, Operations Research 9(3),
// 383-387).

/** Length the tolerances are made for: five runs of this many hours, their mean. */
export const HOURS = 800_000;
export const WARM_UP = 2_000;
export const ROUNDS = 5;

/**
 * Stations ahead of the send-back work each unit once; the other five do so 1 / (1 - 0.08) times on average.
 */
const WORKED_ONCE = 17;
const VISITS = WORKED_ONCE + 5 / 0.92;

const mean = (values) => values.reduce((total, value) => total + value, 0) / values.length;
const workAVisit = (run) => mean(run.working.slice(0, WORKED_ONCE)) / run.throughput;
const littleRatio = (run) => run.wip / (run.throughput * run.leadTime);
const tasksAUnit = (run) => run.completions / (run.throughput * (HOURS + WARM_UP));

/**
 * Tolerances: five standard deviations of the mean of five runs (deviation of one run measured over 24 seeds:
 * throughput 0.0003, WIP 0.029, lead time 0.052, P95 0.070, working 0.0004, blocked 0.0004), plus the
 * standard error of the known value itself and half a unit of its last digit. The three laws are far
 * steadier: six single runs were off by at most 0.00015, 0.00001 and 0.0014, so a slip in the accounts of a
 * station shows there first.
 */
const KNOWN = [
  { name: 'throughput, units an hour', value: 0.8626, tolerance: 0.0009, read: (run) => run.throughput },
  { name: 'WIP, units', value: 53.29, tolerance: 0.09, read: (run) => run.wip },
  { name: 'lead time, h', value: 61.79, tolerance: 0.16, read: (run) => run.leadTime },
  { name: 'lead time P95, h', value: 70.9, tolerance: 0.24, read: (run) => run.leadTimeP95 },
  { name: 'station 10 working', value: 0.8625, tolerance: 0.0011, read: (run) => run.working[9] },
  { name: 'station 10 blocked', value: 0.1326, tolerance: 0.0011, read: (run) => run.blocked[9] },
  { name: 'hours worked a visit', value: 1, tolerance: 0.0003, read: workAVisit },
  { name: 'WIP / (throughput x lead time)', value: 1, tolerance: 0.0002, read: littleRatio },
  { name: 'tasks finished a unit', value: VISITS, tolerance: 0.01, read: tasksAUnit },
];

/** Compare the mean of `runs` with every known value: one row each, `right` false where it is outside. */
export function checkRuns(runs) {
  return KNOWN.map(({ name, value, tolerance, read }) => {
    const seen = mean(runs.map(read));
    return { name, value, tolerance, seen, right: Math.abs(seen - value) <= tolerance };
  });
}
