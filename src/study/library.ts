/**
 * The reader and the engine as a library, as built into `dist/study/library.js`: for the bench and for checks
 * of what is shipped.
 */

export { simulate } from '../flow/engine.js';
export { floorLog } from '../flow/floor-log.js';
export { prepare } from '../flow/plan.js';
export { observe } from '../measure/observe.js';
export { eventsOfRun } from '../records/log/of-run.js';
export { readLog } from '../records/log/read.js';
export { logLines } from '../records/log/write.js';
export { eventsOfOcel, ocelIn } from '../records/ocel/read.js';
export { ocelOf } from '../records/ocel/write.js';
export { readFactors } from '../scenario/changes/factors.js';
export { compile } from '../scenario/compile.js';
export { withWarmUp } from '../scenario/data.js';
export { sayProblem } from '../scenario/file/problem.js';
export { runSpan } from '../scenario/programme/span.js';
export { readScenario, scenarioData } from '../scenario/read.js';
export { readWhatIfs } from '../scenario/what-ifs.js';
export { UntilPrecise } from './answer/precision.js';
export { buffersStudy } from './buffers/buffers.js';
export { capacity } from './capacity/capacity.js';
export { compareDesign } from './compare/design.js';
export { factorsDesign } from './factors/design.js';
export { takenOut } from './fit/factors.js';
export { fitFamily } from './fit/fit.js';
export { Draws } from './fit/goodness/draws.js';
export { andersonDarling, kolmogorovSmirnov, sharesAt } from './fit/goodness/statistics.js';
export { testsOfFit } from './fit/goodness/test-of-fit.js';
export { knownOf } from './fit/intervals.js';
export { FAMILIES } from './fit/kinds/families.js';
export { sampleOf } from './fit/kinds/sample.js';
export { againstScenario } from './fit/shown/against.js';
export { bandOf } from './fit/shown/band.js';
export { fitTimes } from './fit/times.js';
export { kruskalWallis } from './fit/warnings/options.js';
export { drift, nextCorrelation } from './fit/warnings/order.js';
export { farOut } from './fit/warnings/outliers.js';
export { twoPopulations } from './fit/warnings/populations.js';
export { buildsAhead } from './forecast/builds-ahead.js';
export { machineDigest } from './machine.js';
export { chanceResults } from './measured/chances.js';
export { timeEntry } from './measured/entry.js';
export { learningResults } from './measured/learning.js';
export { readFloor } from './measured/log/floor.js';
export { rateStudy } from './rate/rate.js';
export { reachStudy } from './reach/reach.js';
export { reliefsStudy } from './reliefs/reliefs.js';
export { tuneFor } from './run/plans.js';
export { Replicator } from './run/replicator.js';
export { simulateDesign } from './simulate/design.js';
export { findWarmUp } from './simulate/found-warm-up.js';
export { simulateStudy } from './simulate/simulate.js';
export { randomEffects } from './uncertain/random-effects.js';
export { validateStudy } from './validate/validate.js';
