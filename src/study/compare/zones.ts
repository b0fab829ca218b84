import type { MeasureId } from './results.js';

/**
 * What a zone can be set for, as the command line names it. A leaf: the command line reads it before any
 * study is loaded.
 */
export const ZONE_MEASURES = ['throughput', 'lead-time', 'wip', 'last-unit', 'cost'] as const;
export type ZoneMeasure = (typeof ZONE_MEASURES)[number];

/** Share of the base's mean up to which a difference does not matter, 0.01 for 1 %, by what is measured. */
export type Zones = Readonly<Record<ZoneMeasure, number>>;

/** Our own convention; there is no standard for it. */
export const USUAL_ZONE = 0.01;

export const sameZone = (share: number): Zones => ({
  throughput: share,
  'lead-time': share,
  wip: share,
  'last-unit': share,
  cost: share,
});

const NAMED: Readonly<Record<MeasureId, ZoneMeasure>> = {
  throughput: 'throughput',
  'lead mean': 'lead-time',
  'lead p90': 'lead-time',
  wip: 'wip',
  'last unit': 'last-unit',
  cost: 'cost',
};

/** The share that goes for a measure. */
export const zoneShare = (zones: Zones, id: MeasureId): number => zones[NAMED[id]];
