/** Of what a relief is more or less: what it would relieve if that stops the build. */
export interface Thing {
  /**
   * - station, crew, carrier, equipment, lane, feeder, supply: as the capacity table has them, name and site.
   * - team: the name of the team, the site of its crew.
   * - room: spaces ahead of a station, for rework too (name: the station), or a bank of a lane (name: the
   *   lane), with the site where they are.
   * - hours: a calendar, no site.
   * - step: the site of its station.
   * - change: one that the scenario names under `costs: changes`, no site.
   */
  readonly kind: ThingKind;
  readonly name: string;
  /** Empty where there is none. */
  readonly site: string;
}

export const THING_KINDS = [
  'station',
  'crew',
  'team',
  'carrier',
  'equipment',
  'lane',
  'room',
  'feeder',
  'supply',
  'hours',
  'step',
  'change',
] as const;
export type ThingKind = (typeof THING_KINDS)[number];

/** Names of crews, equipment and teams may stand in several sites; the others are told by their name. */
export const keyOfThing = ({ kind, name, site }: Thing): string =>
  JSON.stringify(WITH_SITE.includes(kind) ? [kind, name, site] : [kind, name]);
const WITH_SITE: readonly ThingKind[] = ['crew', 'equipment', 'team', 'step'];
