import type { Lane } from './lane.js';
import { AT_BASE, EMPTYING, WAIT_DOCK } from './states.js';

/** The counts of a lane are those of its trucks; what it says of each is in one sentence: what, seen, wanted. */
export function auditLane(
  { name, trucks, ready, blockedNow }: Lane,
  expectEqual: (what: string, seen: number, wanted: number) => void,
): void {
  const inPhase = (phase: number): number => trucks.filter((truck) => truck.phase === phase).length,
    withoutRoom = inPhase(EMPTYING);
  expectEqual(`trucks of ${name} at base`, ready, inPhase(AT_BASE));
  expectEqual(
    `trucks of ${name} that wait for room`,
    blockedNow,
    withoutRoom + Math.min(withoutRoom, inPhase(WAIT_DOCK)),
  );
}
