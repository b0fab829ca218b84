import type { Command } from '../arguments/command.js';
import { buffers } from './buffers.js';
import { check } from './check.js';
import { compare } from './compare.js';
import { factors } from './factors.js';
import { fit } from './fit.js';
import { map } from './map.js';
import { merge } from './merge.js';
import { rate } from './rate.js';
import { reach } from './reach.js';
import { forecast } from './records/forecast.js';
import { opening } from './records/opening.js';
import { validate } from './records/validate.js';
import { reliefs } from './reliefs.js';
import { schema } from './schema.js';
import { simulate } from './simulate.js';
import { worker } from './worker.js';

/** Every command, in the order of the help. */
export const COMMANDS: readonly Command[] = [
  check,
  map,
  simulate,
  reach,
  rate,
  reliefs,
  compare,
  factors,
  buffers,
  fit,
  validate,
  opening,
  forecast,
  merge,
  schema,
  worker,
];
