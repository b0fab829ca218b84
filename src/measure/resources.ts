import type { Run } from '../flow/run.js';
import { column, over } from './columns.js';
import { type CrewTime, ruledMinutes } from './crew-time.js';
import { crewBusy, crewsOf } from './utilisation.js';

/** Reads what is claimed: crews, stocks, supplies, carriers and teams. */
export function observeResources(run: Run, people: CrewTime) {
  const {
      tally,
      overtimeRules,
      shop: { resources, supplies, companions },
    } = run,
    crews = crewsOf(run),
    share = (time: number): number => over(time, run.now - run.observedFrom);
  return {
    /** By crew: engaged person-time over time on shift. */
    crewBusy: column(crews, (crew) => crewBusy(run, crew, people)),
    /** Person-minutes of crews on shift, see `crew-time.ts`; and engaged, by crew * buckets + bucket. */
    crewTime: people,
    crewEngagedIn: tally.engagedIn,
    /** By crew: person-minutes of work done again and of repairs. */
    reworkMinutes: column(crews, ({ rework }) => rework),
    /**
     * By overtime rule: how often it was looked at, and worked; minutes worked by rule * buckets + bucket.
     */
    overtimeRules: {
      looked: column(overtimeRules, ({ looked }) => looked),
      worked: column(overtimeRules, ({ worked }) => worked),
      minutesIn: ruledMinutes(run),
    },
    /** By resource: mean stock (of carriers: free) and share of time without stock; 0 for crews. */
    stockMean: column(resources, ({ area }) => share(area)),
    stockOut: column(resources, ({ out }) => share(out)),
    /**
     * By supply: mean on order (of a delivery plan: overdue), least stock, lots received and those of them
     * late, waits for want of it and their minutes.
     */
    supplies: {
      onOrder: column(supplies, ({ onOrderMinutes }) => share(onOrderMinutes)),
      least: column(supplies, ({ least }) => least),
      lots: column(supplies, ({ lots }) => lots),
      lateLots: column(supplies, ({ lateLots }) => lateLots),
      waits: column(supplies, ({ waits }) => waits),
      waitMinutes: column(supplies, ({ waitMinutes }) => waitMinutes),
    },
    /** By carriers and teams: mean number with units and on the way back, holds that ended. */
    kept: {
      held: column(companions, ({ heldMinutes }) => share(heldMinutes)),
      coming: column(companions, ({ comingMinutes }) => share(comingMinutes)),
      ended: column(companions, ({ ended }) => ended),
    },
  };
}
