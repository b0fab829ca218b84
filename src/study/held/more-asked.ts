import type { Observation } from '../../measure/observe.js';
import { dayNumber, isoDate } from '../../scenario/calendar/date.js';
import { compile } from '../../scenario/compile.js';
import { digest } from '../../scenario/digest.js';
import { askedRate } from '../../scenario/programme/rates.js';
import type { RatePhase } from '../../scenario/types/programme.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { over } from '../constraint/trial.js';
import { defined } from '../lists.js';
import { arithmeticOf } from '../loads/loads.js';
import { stretchOf, type Window } from '../programme/judged-window.js';
import type { Replicator } from '../run/replicator.js';
import type { Planned } from '../sample/planned.js';
import { type CanShip, canShip, type Shipped, shippable, shippedIn } from './evidence.js';
import { wholeUnits } from './keep-up.js';
import { type RateJudged, verdictOf } from './rate-held.js';

/**
 * So many times as much is asked: a little more, which builds that go on as before still ship, then more than
 * most builds can.
 */
const TIMES = [1.03, 1.1];
/** Replications of each at first. */
const FIRST = 20;

/**
 * Adds what a build can ship in the weeks judged when more is asked, where enough builds keep up with the
 * rate asked. The highest phase is raised, and there are units enough. Only as many replications are run as
 * it takes, up to those of the build itself.
 */
export async function withShippable(
  judged: RateJudged,
  plan: Planned,
  replications: number,
  replicator: Replicator,
): Promise<RateJudged> {
  const { verdict, window, counting, holding, askedPerDay } = judged;
  if (verdict !== 'holds' || window === null || counting === null || holding === null || askedPerDay === null)
    return judged;
  const isWithinArithmetic = askedPerDay <= arithmeticOf(plan).ceiling * (1 + 1e-9),
    stretch = stretchOf(plan, window),
    variants = TIMES.map((times) => {
      const scenario = asking(plan.scenario, times, window),
        model = over(compile(scenario), stretch.from, stretch.to),
        isBuiltAgain = model.programme.orders.replaceScrapped;
      return {
        key: `${digest(scenario)} to ${stretch.to}`,
        model,
        // A build that stands still has nothing to say of what it could ship.
        read: (seen: Observation) =>
          seen.outcome === 'gridlock' ? NaN : counting.shipped(seen) + (isBuiltAgain ? 0 : seen.scrapped),
      };
    }),
    units: number[][] = variants.map(() => []);
  const found = (): Shipped[] =>
    units.filter((each) => each.length > 0).map((each) => shippedIn(each, wholeUnits(counting)));
  let enough: CanShip = 'open';
  for (let most = Math.min(FIRST, replications); ; most = Math.min(2 * most, replications)) {
    for (const [i, variant] of variants.entries()) {
      const known = defined(units[i]);
      known.push(...(await replicator.row(variant, known.length + 1, most)));
      enough = canShip(window.asked, found(), isWithinArithmetic);
      if (enough !== 'open') break;
    }
    if (enough !== 'open' || most === replications) break;
  }
  const seen = { ...holding, canShip: { ...shippable(found(), window.workingDays), enough } };
  return { ...judged, holding: seen, verdict: verdictOf(seen) };
}

/** The scenario with its highest phases so many times as high, up to the end of the weeks judged. */
function asking(scenario: Scenario, times: number, { to }: Window): Scenario {
  const { programme } = scenario,
    { release, lengthMin, orders } = programme,
    { highest, phases } = askedRate(scenario);
  if (release.kind !== 'rate') return scenario;
  return {
    ...scenario,
    programme: {
      ...programme,
      release: {
        ...release,
        phases: release.phases.map((phase, i) =>
          phases[i]?.perDay === highest ? raised(phase, times) : phase,
        ),
      },
      quantity: undefined,
      until: lengthMin === undefined ? isoDate(dayNumber(to) + 1) : programme.until,
      orders: { ...orders, list: [], dueAfterMin: undefined },
    },
  };
}

const raised = ({ from, perDay, perWeek }: RatePhase, times: number): RatePhase => ({
  from,
  perDay: perDay === undefined ? undefined : times * perDay,
  perWeek: perWeek === undefined ? undefined : times * perWeek,
});
