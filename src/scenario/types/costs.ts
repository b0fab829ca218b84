import type { PossibleChange } from './possible.js';

/** Prices, in one currency. What has no price costs nothing. Maps keep the planner's names. */
export interface Costs {
  readonly currency: string;
  /** An hour on shift of one person, by crew; `default`: of crews not named. */
  readonly people: Readonly<Record<string, HourPrice>>;
  /** By lane: a trip, and a truck for a day. */
  readonly trucks: Readonly<Record<string, { readonly trip: number; readonly day: number }>>;
  /** By equipment: a piece for a day. */
  readonly equipment?: Readonly<Record<string, { readonly day: number }>> | undefined;
  /** By name: one of them for a day. */
  readonly carriers?: Readonly<Record<string, { readonly day: number }>> | undefined;
  /** A unit in work for a day. */
  readonly unitDay: number | undefined;
  readonly sendBack: number | undefined;
  readonly scrap: number | undefined;
  /** One changeover, by station. */
  readonly changeovers: Readonly<Record<string, number>>;
  /** By supply: a lot received, and a part in stock for a day. */
  readonly supplies: Readonly<Record<string, { readonly lot: number; readonly stockDay: number }>>;
  /** A space of a limited buffer or bank, or a place of a station, for a day. */
  readonly spaceDay: number | undefined;
  /** Where it has another price: the station or bank comes before the site. Undefined: nowhere. */
  readonly spaceDayAt?: SpacePrices | undefined;
  /** A unit for a day after its due date. */
  readonly lateDay?: number | undefined;
  /** Whatever is built, a day. */
  readonly standingDay?: number | undefined;
  /** What could be changed. No result of a build depends on it. */
  readonly changes?: readonly PossibleChange[] | undefined;
}
export interface SpacePrices {
  readonly sites: Readonly<Record<string, number>>;
  readonly stations: Readonly<Record<string, number>>;
  readonly lanes: Readonly<Record<string, BankPrices>>;
}
export interface BankPrices {
  readonly bank: number | undefined;
  readonly arrivalBank: number | undefined;
}
export interface HourPrice {
  readonly hour: number;
  readonly overtimeHour: number;
}
