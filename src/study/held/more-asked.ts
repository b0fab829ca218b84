import { dayNumber, isoDate } from '../../scenario/calendar/date.js';
import { compile } from '../../scenario/compile.js';
import { digest } from '../../scenario/digest.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { over } from '../constraint/trial.js';
import { defined } from '../lists.js';
import { arithmeticOf } from '../loads/loads.js';
import { stretchOf, type Window } from '../programme/judged-window.js';
import { withHighestRate } from '../reliefs/changes.js';
import type { Replicator } from '../run/replicator.js';
import type { Planned } from '../sample/planned.js';
import { type CanShip, canShip, isWithinArithmetic, type Shipped, shippable, shippedIn } from './evidence.js';
import { unitsOut, wholeUnits } from './keep-up.js';
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
  const isWithin = isWithinArithmetic(askedPerDay, arithmeticOf(plan).ceiling),
    stretch = stretchOf(plan, window),
    variants = TIMES.map((times) => {
      const scenario = askedMore(plan.scenario, times * askedPerDay, window),
        model = over(compile(scenario), stretch.from, stretch.to);
      return {
        key: `${digest(scenario)} to ${stretch.to}`,
        model,
        read: unitsOut(model, counting),
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
      enough = canShip(window.asked, found(), isWithin);
      if (enough !== 'open') break;
    }
    if (enough !== 'open' || most === replications) break;
  }
  const seen = { ...holding, canShip: { ...shippable(found(), window.workingDays), enough } };
  return { ...judged, holding: seen, verdict: verdictOf(seen) };
}

/** The scenario with its highest phases at a rate, units a working day, up to the end of the weeks judged. */
export function askedMore(scenario: Scenario, perDay: number, { to }: Window): Scenario {
  const changed = withUnitsEnough(withHighestRate(scenario, perDay)),
    { programme } = changed;
  return programme.lengthMin === undefined
    ? { ...changed, programme: { ...programme, until: isoDate(dayNumber(to) + 1) } }
    : changed;
}

/** The scenario with as many units as its rate asks for, each of them drawn and none due. */
export const withUnitsEnough = ({ programme, ...rest }: Scenario): Scenario => ({
  ...rest,
  programme: {
    ...programme,
    quantity: undefined,
    orders: { ...programme.orders, list: [], dueAfterMin: undefined },
  },
});
