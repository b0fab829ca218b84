import { sayPath } from '../file/problem.js';
import type { Path } from '../types/problem.js';
import { isRawMap, mapOf, own, valueAt } from '../values/raw.js';
import { CREW, EQUIPMENT, PLANT, SITE, STATION } from './plant.js';
import { COSTS, IN_A_TIME, OUTAGE, SCENARIO } from './programme.js';
import { matched, type Rules } from './rules.js';
import { shiftName } from './shifts.js';
import { SIDE_BY_SIDE, STEP, TRIP } from './steps.js';

/**
 * What stands at a path of a scenario, in a planner's words: `the work of prime` for `route[3].work`, `the
 * number of painters on the late shift` for the second headcount of a crew. A path that is not known is said
 * as it is.
 * @param root the data of the whole scenario, includes put in, from which names and hours are taken
 */
export function wordsFor(path: Path, root: unknown): string {
  const { rules, thing, rest, where } = thingAt(path, root);
  const found = matched(rest, rules, thing);
  if (found === undefined) return sayPath(path);
  const words = found.words + behind(found.rest);
  return where === undefined ? words : `${words} ${where}`;
}

/** A thing that a path leads to, with the words for what it has, and the path below it. */
interface Thing {
  readonly rules: Rules;
  readonly thing: string;
  readonly rest: Path;
  /** What is said behind the words. */
  readonly where?: string | undefined;
}

function thingAt(path: Path, root: unknown): Thing {
  const [section, name, ...rest] = path;
  if (section === 'route' && name !== undefined) return entryAt(path, 2, root);
  if (section === 'feeders' && rest[0] === 'route' && rest[1] !== undefined) return entryAt(path, 4, root);
  if (section === 'sites' && name !== undefined) return ofSite(path, root);
  if (section === 'outages' && typeof name === 'number') {
    const { note } = mapOf(valueAt(root, [section, name]));
    return { rules: OUTAGE, thing: typeof note === 'string' ? `"${note}"` : String(name + 1), rest };
  }
  if (section === 'programme') return ofProgramme(path, root);
  if (section === 'costs') return { rules: COSTS, thing: '', rest: path };
  const rules = typeof section === 'string' ? own(PLANT, section) : undefined;
  return rules === undefined || name === undefined
    ? { rules: SCENARIO, thing: '', rest: path }
    : { rules, thing: String(name), rest };
}

/** An entry of a route, whose path is so many parts long; or a step of several side by side in it. */
function entryAt(path: Path, length: number, root: unknown): Thing {
  const here = path.slice(0, length),
    [inner, index] = path.slice(length);
  const entry = mapOf(valueAt(root, here));
  if (inner === 'side by side' && typeof index === 'number') {
    const { step } = mapOf(valueAt(root, path.slice(0, length + 2)));
    return { rules: STEP, thing: nameOf(step, `step ${index + 1}`), rest: path.slice(length + 2) };
  }
  const rest = path.slice(length);
  if (entry['lane'] !== undefined) return { rules: TRIP, thing: nameOf(entry['lane'], 'a lane'), rest };
  if (entry['side by side'] !== undefined)
    return { rules: SIDE_BY_SIDE, thing: nameOf(entry['at'], 'one place'), rest };
  const number = Number(here.at(-1)) + 1;
  return { rules: STEP, thing: nameOf(entry['step'], `step ${number}`), rest };
}

function ofSite([, site = '', kind, name, ...rest]: Path, root: unknown): Thing {
  const sites = mapOf(mapOf(root)['sites']),
    thing = String(name);
  if (kind === 'stations' && name !== undefined) return { rules: STATION, thing, rest };
  const of = { crews: CREW, equipment: EQUIPMENT }[String(kind)];
  if (of === undefined || name === undefined)
    return {
      rules: SITE,
      thing: String(site),
      rest: [kind, name, ...rest].filter((part) => part !== undefined),
    };
  const namesakes = Object.values(sites).filter(
      (each) => own(mapOf(mapOf(each)[String(kind)]), thing) !== undefined,
    ),
    here = sites[String(site)],
    [, shift] = rest;
  const where = [
    ...(rest[0] === 'headcount' && typeof shift === 'number'
      ? [`on ${shiftName(root, here, mapOf(mapOf(here)['crews'])[thing], shift)}`]
      : []),
    ...(namesakes.length > 1 ? [`in ${site}`] : []),
  ];
  return { rules: of, thing, rest, where: where.length === 0 ? undefined : where.join(' ') };
}

const nameOf = (written: unknown, otherwise: string): string =>
  typeof written === 'string' || typeof written === 'number' ? String(written) : otherwise;

/** A rate of a ramp is told by its first day; an option that is there or not by its name alone. */
function ofProgramme(path: Path, root: unknown): Thing {
  const [, key, name] = path,
    value = valueAt(root, path.slice(0, 3));
  if (key === 'options' && path.length === 3 && value !== undefined && !isRawMap(value))
    return { rules: { '': 'the share of units with @' }, thing: String(name), rest: [] };
  const { from } = mapOf(value);
  const isPhase = key === 'rate' && typeof name === 'number' && path.at(-1) !== 'from';
  return {
    rules: SCENARIO,
    thing: '',
    rest: path,
    where: isPhase && typeof from === 'string' ? `from ${from} on` : undefined,
  };
}

/** What stands inside a time; anything else by its keys. */
function behind(rest: Path): string {
  const [form, index, key, ...inner] = rest;
  if (form === 'mixture' && typeof index === 'number')
    return key === 'share' ? `, the share of part ${index + 1}` : `, part ${index + 1}${behind(inner)}`;
  // A time by option: what is not known of a time is the option.
  if (form === 'usual') return `, the usual one${behind(rest.slice(1))}`;
  if (typeof form === 'string' && typeof index === 'string' && own(IN_A_TIME, form) === undefined)
    return ` where ${form} is ${index}${behind(rest.slice(2))}`;
  const said = rest
    .filter((part) => typeof part !== 'number')
    .map((part) => own(IN_A_TIME, part) ?? `, ${part}`);
  return said.join('');
}
