import { chance, type Rules } from './rules.js';

/** What follows a find or a failed test; `{0}` is what was found. */
const then = (address: string, found: string): Rules => ({
  [address]: `what follows ${found}`,
  [`${address}.repair`]: `the repair after ${found}`,
  [`${address}.back to`]: `where it goes back to after ${found}`,
  [`${address}.by`]: `the lanes back after ${found}`,
  [`${address}.limit`]: `the most send-backs after ${found}`,
  [`${address}.at limit`]: `what follows the last send-back after ${found}`,
  [`${address}.scrap`]: `whether a unit is scrapped after ${found}`,
  [`${address}.carry`]: `the mending, later, after ${found}`,
});

/** A step of a route; `@` is its name. */
export const STEP: Rules = {
  '': 'the step @',
  step: 'the name of @',
  at: 'the station of @',
  when: 'the condition of @',
  'when.*': 'the {0} for which @ is done',
  crew: 'the crew of @',
  'crew.*': 'the number of {0} at @',
  equipment: 'the equipment of @',
  'equipment.*': 'the number of {0} at @',
  'equipment.*.count': 'the number of {0} at @',
  'equipment.*.first': 'how long @ has {0} at its beginning',
  'equipment.*.last': 'how long @ has {0} at its end',
  work: 'the work of @',
  passes: 'the passes of @',
  'passes.count': 'the number of passes of @',
  'passes.work': 'the work of one pass of @',
  'passes.settle': 'the settling wait of @',
  'work factor': 'the factors on the work of @',
  'work factor.*': 'the factors on the work of @ by {0}',
  'work factor.*.*': 'the factor on the work of @ where {0} is {1}',
  learning: 'the learning at @',
  'learning.rate': 'the learning rate of @',
  'learning.curve': 'the learning curve of @',
  'learning.floor': 'the lowest share of its work that @ comes down to',
  'learning.built before': 'the units built before at @',
  process: 'the process of @',
  setting: 'the setting of @',
  'setting.usual': 'the usual setting of @',
  'setting.*': 'the settings of @ by {0}',
  'setting.*.*': 'the setting of @ where {0} is {1}',
  'attended end': 'whether the process of @ waits for people at its end',
  'in one shift': 'whether @ is done in one shift',
  rework: 'whether @ is done in rework',
  sample: 'the sample at @',
  'sample.1 in': 'the sample at @, one unit in how many',
  'sample.by': 'how the sample at @ is taken',
  parts: 'the parts that @ takes',
  'parts.*': 'the number of {0} that @ takes',
  'wait for parts': 'where @ waits for its parts',
  'takes off': 'what @ takes off',
  creates: 'the defects that @ causes',
  ...chance('creates.*', 'the chance of {0} from @'),
  finds: 'what @ finds',
  ...then('finds.*', 'a find of {0} at @'),
  ...chance('finds.*.chance', 'the chance that @ finds {0}'),
  ...then('fails', 'a failure at @'),
  ...chance('fails.chance', 'the chance that @ fails'),
  hold: 'the hold at @',
  'hold.mend': 'the mending of an item at @',
  'compares with': 'the earlier measurement that @ is compared with',
  'compares with.step': 'the earlier measurement that @ is compared with',
  'compares with.if it differs': 'the extra work where @ differs from the earlier measurement',
};

/** Several steps at once; `@` is their station. */
export const SIDE_BY_SIDE: Rules = {
  '': 'the steps side by side at @',
  'side by side': 'the steps side by side at @',
  at: 'the station of the steps side by side at @',
  when: 'the condition of the steps side by side at @',
  'when.*': 'the {0} for which the steps side by side at @ are done',
};

/** A lane in a route; `@` is its name. */
export const TRIP: Rules = {
  '': 'the trip on @',
  lane: 'the lane of the trip on @',
  when: 'the condition of the trip on @',
  'when.*': 'the {0} that goes by @',
};
