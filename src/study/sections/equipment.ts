import { equipmentOf } from '../../flow/model/resources.js';
import { named } from '../lists.js';
import type { Pending } from '../sample/deferred.js';
import type { Sample } from '../sample/sample.js';
import type { Estimate } from '../statistics/estimate.js';
import { ratio } from '../statistics/sums.js';

/** Equipment that stations of a site share, over the time observed. */
export interface EquipmentResult {
  readonly name: string;
  readonly site: string;
  readonly count: number;
  /** Time in use over time in its hours, of all pieces; one that failed in use counts as in use. */
  readonly busy: Estimate;
  /** Places that wait for it, on average; how often one had to, and the mean of these waits by the clock. */
  readonly waiting: Estimate;
  readonly waits: Estimate;
  readonly waitHours: Estimate;
  /** Failures of all pieces, and the mean time to the end of the repair, by the clock. */
  readonly failures: Estimate;
  readonly downHours: Estimate;
}

/** Site by site, in the order of the scenario; undefined where there is none. */
export function equipment(sample: Sample): Pending<EquipmentResult[]> | undefined {
  const { resources, stations } = sample.model,
    shared = equipmentOf(resources);
  if (shared.length === 0) return undefined;
  return shared.map((resource, id) => {
    const owner = stations.count + resource;
    return {
      ...named(sample.model, 'resources', resource),
      count: resources.amount[resource],
      busy: sample.share((each) => ratio(each.equipment.used[id], each.equipment.there[id])),
      waiting: sample.amount((each) => ratio(each.equipment.waitMinutes[id], each.minutes)),
      waits: sample.events((each) => each.equipment.waits[id]),
      waitHours: sample.amount((each) =>
        ratio(each.equipment.waitMinutes[id] / 60, each.equipment.waits[id]),
      ),
      failures: sample.events(({ failures: { count } }) => count[owner]),
      downHours: sample.amount(({ failures: { minutes, repairs } }) =>
        ratio(minutes[owner] / 60, repairs[owner]),
      ),
    };
  });
}
