import type { Equipment } from '../floor/equipment.js';
import type { Place } from '../floor/place.js';
import type { Run } from '../run.js';
import type { Need } from './needs.js';
import type { Claimant } from './outside.js';
import { give } from './resource.js';

/**
 * Rule 2, shared equipment: hoists, cranes, rigs, of which stations claim some for work, as they claim
 * people. A step may need one for the first or the last minutes of its work alone, see `tasks/parts.ts`.
 */

/** Whether the need is one of the work that goes on at the place, or comes next: some are of a part of it. */
export const isWanted = ({ wanted }: Claimant, { bit }: Need): boolean => bit === 0 || (wanted & bit) !== 0;

/** In a scan: books which equipment the request of a place lacks, by the rule of `lacking`. */
export function noteLackOfEquipment(run: Run, place: Claimant): void {
  place.asked.equipmentNeeds.forEach((need, i) => {
    const { resource, amount } = need,
      isLacking = isWanted(place, need) && (resource.free < amount || resource.scarceAt === run.scan);
    if (isLacking !== ((place.lackedEquipment & (1 << i)) !== 0)) change(run, place, i, isLacking);
  });
}

/** The request is met. */
export function endLackOfEquipment(run: Run, place: Claimant): void {
  for (let i = 0; place.lackedEquipment >> i !== 0; i++)
    if ((place.lackedEquipment & (1 << i)) !== 0) change(run, place, i, false);
}

function change(run: Run, place: Claimant, i: number, isLacking: boolean): void {
  const shared = place.asked.equipmentNeeds[i].resource.shared!;
  place.lackedEquipment ^= 1 << i;
  shared.changeLacking(isLacking ? 1 : -1, run.now);
  // It came at the instant at which it was asked for.
  if (!isLacking && place.wantedSince === run.now) shared.waits--;
}

/** The place takes some of it; the first pieces that are up and not in use, where these can fail. */
export function takeEquipment(run: Run, place: Place, { resource, amount }: Need): void {
  const { pieces } = resource.shared!;
  resource.change(-amount, run.now);
  for (let p = 0, left = pieces.length === 0 ? 0 : amount; left > 0; p++) {
    const piece = pieces[p];
    if (piece.isDown || piece.isInUse) continue;
    piece.isInUse = true;
    piece.places.push(place);
    place.pieces.push(piece);
    left--;
  }
}

/** Gives it back. A piece that is down is free when it is up; until then the place is down and keeps it. */
export function giveEquipment(run: Run, place: Place, { resource, amount }: Need): void {
  let broken = 0;
  for (const piece of place.pieces.filter(({ shared }) => shared === resource)) {
    piece.isInUse = false;
    if (piece.isDown) broken++;
    else leavePiece(piece);
  }
  give(run, resource, amount);
  if (broken > 0) resource.staff(resource.onHand - broken, run.now);
}

/** The place that had it has it no more; that place, if there is one. */
export function leavePiece(piece: Equipment): Place | undefined {
  const place = piece.places.pop();
  place?.pieces.splice(place.pieces.indexOf(piece), 1);
  return place;
}
