import type { BufferResults } from '../../study/buffers/results.js';
import type { CompareResults } from '../../study/compare/results.js';
import type { FactorsResults } from '../../study/factors/results.js';
import type { FitResults } from '../../study/fit/results.js';
import type { ForecastResults } from '../../study/forecast/forecast.js';
import type { RateResults } from '../../study/rate/results.js';
import type { ReachResults } from '../../study/reach/results.js';
import type { ReliefsResults } from '../../study/reliefs/results.js';
import type { Results } from '../../study/simulate/results.js';
import type { ValidateResults } from '../../study/validate/results.js';
import { toldConstraint, triedAt, triedWith, WITH_THEM } from '../constraint.js';
import { triedOn } from '../factors.js';
import type { DrawChart } from './chart.js';
import { compareDifferences } from './compared/compare-differences.js';
import { compareThroughput, compareWip } from './compared/compare-weeks.js';
import { factorEffects, factorEffectsElsewhere } from './compared/factors-effects.js';
import { factorPairs } from './compared/factors-pairs.js';
import { mostForEach } from './reach/most-for-each.js';
import { lastUnitBeside, shippedBeside, wayPicture } from './reach/way.js';
import { fitHistograms } from './records/fit-histograms.js';
import { fitQuantiles } from './records/fit-quantiles.js';
import { fitSteps } from './records/fit-steps.js';
import { ordersAhead } from './records/forecast-orders.js';
import { shippedAhead } from './records/forecast-shipped.js';
import { measuresInBands } from './records/validate-bands.js';
import { shippedInBand } from './records/validate-shipped.js';
import { stepTimes } from './records/validate-steps.js';
import { wipInBands } from './records/validate-wip.js';
import { bottlenecks } from './simulate/bottlenecks.js';
import { buffers } from './simulate/buffers.js';
import { changeovers } from './simulate/changeovers.js';
import { costPerUnit } from './simulate/costs.js';
import { crewLoad } from './simulate/crews.js';
import { firstTimeThrough } from './simulate/inspections.js';
import { journey } from './simulate/journey.js';
import { leadTime } from './simulate/lead-time.js';
import { outageRecovery } from './simulate/outages.js';
import { shippedAgainstPlan } from './simulate/plan.js';
import { placeTime } from './simulate/stations.js';
import { throughputByWeek } from './simulate/throughput.js';
import { warmUp } from './simulate/warm-up.js';
import { wipBySite } from './simulate/wip.js';
import { placeByPlaceChart } from './studies/buffers-around.js';
import { lossByCase } from './studies/buffers-cases.js';
import { placesCurve } from './studies/buffers-curve.js';
import { placesLayout } from './studies/buffers-layout.js';
import { lossLadder } from './studies/constraint-ladder.js';
import { trialGains } from './studies/constraint-trials.js';
import { rateStops } from './studies/rate-stops.js';
import { rateThroughput } from './studies/rate-throughput.js';
import { rateWipLead } from './studies/rate-wip-lead.js';
import { reliefGains } from './studies/reliefs-gains.js';
import { reliefTornado } from './studies/reliefs-tornado.js';

/** Pictures of a study by file name, in the order of the page. */
export type ChartsOf<Results> = Readonly<Record<string, DrawChart<Results>>>;

interface ResultsOf {
  simulate: Results;
  compare: CompareResults;
  factors: FactorsResults;
  rate: RateResults;
  reliefs: ReliefsResults;
  buffers: BufferResults;
  reach: ReachResults;
  validate: ValidateResults;
  forecast: ForecastResults;
  fit: FitResults;
}

/** Every picture of every study, for the PNG files and the page alike; numbers stay as they are. */
export const CHARTS = {
  simulate: {
    '01-throughput-by-week': throughputByWeek,
    '15-losses': (results) => lossLadder(toldConstraint(results), results.answer.askedPerDay),
    '16-trials': (results) => trialGains(toldConstraint(results)),
    '04-bottlenecks': bottlenecks,
    '03-place-time': placeTime,
    '02-wip-by-site': wipBySite,
    '05-lead-time': leadTime,
    '06-buffers': buffers,
    '07-first-time-through': firstTimeThrough,
    '08-shipped-against-plan': shippedAgainstPlan,
    '09-journey': journey,
    '10-changeovers': changeovers,
    '11-crew-load': crewLoad,
    '12-outage-recovery': outageRecovery,
    '13-cost-per-unit': costPerUnit,
    '14-warm-up': warmUp,
  },
  compare: {
    '01-differences': compareDifferences,
    '02-throughput-by-week': compareThroughput,
    '03-wip-by-week': compareWip,
    '04-losses': ({ constraint }) => lossLadder(constraint, null),
    '05-trials': (results) => trialGains(results.constraint, triedWith(results)),
  },
  factors: {
    '01-effects': factorEffects,
    '02-together': factorPairs,
    '03-effects-elsewhere': factorEffectsElsewhere,
    '04-losses': ({ constraint }) => lossLadder(constraint, null),
    '05-trials': (results) => trialGains(results.constraint, triedOn(results)),
  },
  rate: {
    '01-throughput-against-rate': rateThroughput,
    '04-losses': ({ constraint }) => lossLadder(constraint, constraint?.perDay ?? null),
    '05-trials': (results) => trialGains(results.constraint, triedAt(results)),
    '02-wip-and-lead-time-against-rate': rateWipLead,
    '03-used-most': rateStops,
  },
  reliefs: { '01-reliefs': reliefGains, '02-measure-next': reliefTornado },
  buffers: {
    '06-cases': lossByCase,
    '01-throughput-by-places': placesCurve,
    '02-places': placesLayout,
    '03-place-by-place': placeByPlaceChart,
    '04-losses': ({ constraint }) => lossLadder(constraint, null),
    '05-trials': ({ constraint }) => trialGains(constraint, WITH_THEM),
  },
  reach: {
    '01-steps': wayPicture,
    '02-most-for-each-sum': mostForEach,
    '03-last-unit-by-step': lastUnitBeside,
    '06-shipped-by-step': shippedBeside,
    '04-losses': ({ constraint }) => lossLadder(constraint, constraint.askedPerDay),
    '05-trials': (results) => trialGains(results.constraint, results.steps.length > 1 ? 'then' : null),
  },
  validate: {
    '01-shipped-by-day': shippedInBand,
    '02-measures-in-bands': measuresInBands,
    '03-step-times': stepTimes,
    '04-units-inside': wipInBands,
  },
  forecast: { '01-orders': ordersAhead, '02-shipped-by-day': shippedAhead },
  fit: { '01-times': fitSteps, '02-distributions': fitHistograms, '03-quantiles': fitQuantiles },
} satisfies { readonly [Study in keyof ResultsOf]: ChartsOf<ResultsOf[Study]> };
