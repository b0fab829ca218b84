import type { Companion } from './companion.js';
import type { Need } from './needs.js';
import type { Pool } from './resource.js';

/**
 * What is claimed together: that of a step, the part of it that is claimed at one place, or a kit. One class
 * for all of them, so that the inner loop knows where its fields lie.
 */
export class Asked {
  needs: readonly Need[] = [];
  /** Those of the needs that are supplies, one for each. */
  supplyNeeds: readonly Pick<Need, 'resource' | 'amount'>[] = [];
  /** Those of the needs that are equipment. */
  equipmentNeeds: readonly Need[] = [];
  /**
   * What has to be with the unit, and its bits; none at a station with lots, where nothing is claimed for
   * single units.
   */
  companions: readonly Companion[] = [];
  companionBits = 0;
  /** Teams that do the work and may be without people, and their bits; steps side by side have them too. */
  teams: readonly Companion[] = [];
  teamBits = 0;
  /** Bits of the own parts that must be on the unit or back at it. */
  ownParts = 0;
  pool: Pool | null = null;

  /** @param id of the step that it is for; of a kit, the first */
  constructor(readonly id: number) {}

  /** Claims so much; `sums` has one row for each resource, where the needs may have several. */
  want(needs: readonly Need[], sums: Asked['supplyNeeds'] = needs): void {
    this.needs = needs;
    this.supplyNeeds = sums.filter(({ resource }) => resource.supply !== null);
    this.equipmentNeeds = needs.filter(({ resource }) => resource.shared !== null);
  }

  /** These have to be with the unit. */
  keep(companions: readonly Companion[]): void {
    this.companions = companions;
    this.companionBits = bitsOf(companions);
  }

  /** These teams do the work. */
  staffWith(teams: readonly Companion[]): void {
    this.teams = teams;
    this.teamBits = bitsOf(teams);
  }
}

const bitsOf = (companions: readonly Companion[]): number =>
  companions.reduce((bits, { bit }) => bits | bit, 0);
