import {
  BLOCKED,
  CHANGEOVER,
  DOWN,
  IN_MENDING,
  IN_REPAIR,
  IN_SETTLE,
  OFF_SHIFT,
  SHORT_CARRIER,
  SHORT_CREW,
  SHORT_EQUIPMENT,
  SHORT_PARTS,
  STARVED,
  UNATTENDED,
  WORKING,
} from '../../flow/floor/states.js';
import {
  AT_DOCK,
  IN_BANK,
  IN_BUFFER,
  IN_TRUCK,
  ON_LOADING,
  ON_ROAD,
  ON_UNLOADING,
  type TracePart,
} from '../../flow/trace.js';

export const JOURNEY_ACTIVITIES = [
  'work',
  'repair',
  'changeover',
  'settling',
  'process',
  'loading',
  'driving',
  'unloading',
  'waiting for a place',
  'no room ahead',
  'short of crew',
  'short of parts',
  'short of carrier',
  'short of equipment',
  'gathering a lot',
  'waiting for a truck',
  'waiting for a dock',
  'waiting in the truck',
  'down',
  'off shift',
] as const;
export type JourneyActivity = (typeof JOURNEY_ACTIVITIES)[number];
/** Of these: something is done to the unit, or it is on the road. */
export const ACTIVE: readonly JourneyActivity[] = JOURNEY_ACTIVITIES.slice(0, 8);

/** What a unit does or waits for in a part of its way. */
export function activity({ state, phase }: TracePart): JourneyActivity {
  switch (state) {
    case WORKING:
      return phase === IN_REPAIR || phase === IN_MENDING ? 'repair' : 'work';
    case CHANGEOVER:
      return 'changeover';
    case UNATTENDED:
      return phase === IN_SETTLE ? 'settling' : 'process';
    case SHORT_CREW:
      return 'short of crew';
    case SHORT_PARTS:
      return 'short of parts';
    case SHORT_CARRIER:
      return 'short of carrier';
    case SHORT_EQUIPMENT:
      return 'short of equipment';
    case BLOCKED:
      return 'no room ahead';
    case STARVED:
      return 'gathering a lot';
    case DOWN:
      return 'down';
    case OFF_SHIFT:
      return 'off shift';
    case IN_BUFFER:
      return 'waiting for a place';
    case IN_BANK:
      return 'waiting for a truck';
    case ON_LOADING:
      return 'loading';
    case ON_ROAD:
      return 'driving';
    case AT_DOCK:
      return 'waiting for a dock';
    case ON_UNLOADING:
      return 'unloading';
    case IN_TRUCK:
      return 'waiting in the truck';
    default:
      throw new Error(`states of a unit's way are 0 to ${IN_TRUCK}; got ${state}`);
  }
}
