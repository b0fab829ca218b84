import type { Pending } from './later.js';
import type { SupplyResult } from './results-supplies.js';
import { ratio, type Sample } from './sample.js';

export function supplies(sample: Sample): Pending<SupplyResult[]> {
  const { supplies, resources, siteNames } = sample.model;
  return Array.from(supplies.resource, (resource, id) => ({
    name: resources.names[resource],
    site: siteNames[resources.site[resource]],
    by: supplies.level[id] < 0 ? 'deliveries' : 'reorder',
    stock: sample.amount(({ stockMean }) => stockMean[resource]),
    out: sample.share(({ stockOut }) => stockOut[resource]),
    least: sample.amount((each) => each.supplies.least[id]),
    lots: sample.amount((each) => each.supplies.lots[id]),
    lateLots: sample.amount((each) => each.supplies.lateLots[id]),
    onOrder: sample.amount((each) => each.supplies.onOrder[id]),
    waits: sample.amount((each) => each.supplies.waits[id]),
    waitHours: sample.amount((each) => ratio(each.supplies.waitMinutes[id] / 60, each.supplies.waits[id])),
  }));
}
