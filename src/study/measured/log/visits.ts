import type { FloorEvent } from '../../../records/log/event.js';
import type { NumberedTimes } from '../../../records/table/numbered.js';
import type { Scenario } from '../../../scenario/types/scenario.js';
import { type Frame, isIn, minutesBetween } from '../../validate/seen/frame.js';
import { type StepPlace, stepPlaces, timePlace } from '../places.js';

const BY_THE_CLOCK = -1;

interface Going {
  readonly at: number;
  readonly number: number;
  isFound: boolean;
}
type Growing = {
  readonly minutes: number[];
  readonly at: number[];
  readonly units: string[];
  readonly numbers: number[];
  readonly factors: number[];
  readonly by: Record<string, string[]>;
};

/**
 * Visits of steps from start to end: minutes in the hours of the step's station and people, of a process by
 * the clock. Visits at which something was found hold repairs and are left out.
 */
export class Visits {
  /** Visits that are left out since something was found at them. */
  withFinds = 0;
  /** Without a minute in the hours of their step. */
  empty = 0;
  private readonly places: ReadonlyMap<string, StepPlace>;
  private readonly of = new Map<string, Growing>();
  private readonly begun = new Map<string, number>();
  private readonly going = new Map<string, Going>();
  private readonly options = new Map<string, Readonly<Record<string, string>>>();

  /**
   * @param local minutes of UTC to those of the programme's clock
   * @param by options that are kept of each visit
   */
  constructor(
    scenario: Scenario,
    private readonly frame: Frame,
    private readonly local: (at: number) => number,
    private readonly by: readonly string[],
  ) {
    this.places = stepPlaces(scenario);
  }

  /** Options of the object of an event, as it entered; none where the log does not tell them. */
  optionsOf({ type, object }: FloorEvent): Readonly<Record<string, string>> {
    return this.options.get(`${type}:${object}`) ?? NONE;
  }

  take(event: FloorEvent): void {
    const { kind, at, step, type, object } = event,
      key = `${type}:${object}`,
      visit = `${key}\n${step}`;
    switch (kind) {
      case 'enter':
        this.options.set(key, event.values);
        break;
      case 'start': {
        const number = (this.begun.get(step) ?? 0) + 1;
        this.begun.set(step, number);
        this.going.set(visit, { at, number, isFound: false });
        break;
      }
      case 'find': {
        const going = this.going.get(visit);
        if (going !== undefined) going.isFound = true;
        break;
      }
      case 'end': {
        const going = this.going.get(visit);
        this.going.delete(visit);
        if (going !== undefined && isIn(going.at, this.frame)) this.add(event, going);
        break;
      }
      case 'ship':
      case 'scrap':
        this.options.delete(key);
        break;
      default:
    }
  }

  private add(event: FloorEvent, { at, number, isFound }: Going): void {
    const { step, object } = event,
      place = this.places.get(step),
      id = this.frame.stepOf.get(step);
    if (place === undefined || id === undefined) return;
    if (isFound) {
      this.withFinds++;
      return;
    }
    const { workFactor, learning } = place.step,
      time = timePlace(place, true),
      isProcess = time.path !== null && time.isProcess,
      calendar = isProcess ? BY_THE_CLOCK : (this.frame.model.steps.workCalendar[id] ?? BY_THE_CLOCK),
      options = this.optionsOf(event),
      factor = Object.entries(workFactor).reduce(
        (product, [option, of]) => product * (of[options[option] ?? ''] ?? 1),
        1,
      ),
      minutes = rounded(minutesBetween(this.frame, calendar, at, event.at));
    if (!(minutes > 0)) {
      this.empty++;
      return;
    }
    const list = this.of.get(step) ?? {
      ...{ minutes: [], at: [], units: [], numbers: [], factors: [] },
      by: Object.fromEntries(this.by.map((option) => [option, [] as string[]])),
    };
    this.of.set(step, list);
    list.minutes.push(minutes);
    list.at.push(this.local(at));
    list.units.push(object);
    list.factors.push(factor);
    list.numbers.push(number + (learning?.builtBefore ?? 0));
    for (const option of this.by) list.by[option]?.push(options[option] ?? '');
  }

  /**
   * By step, in the order of the scenario.
   * @param isPlain divided by the scenario's work factor for the options of each unit
   */
  times(isPlain = false): NumberedTimes[] {
    return [...this.places.keys()].flatMap((step): NumberedTimes[] => {
      const seen = this.of.get(step);
      if (seen === undefined) return [];
      const { factors, ...list } = seen,
        minutes = isPlain ? list.minutes.map((each, i) => each / (factors[i] ?? 1)) : list.minutes;
      return [{ step, lines: [], ...list, minutes }];
    });
  }
}

/** To what a log in microseconds tells, so that equal times are equal. */
const rounded = (minutes: number): number => Math.round(minutes * PER_MINUTE) / PER_MINUTE;
const PER_MINUTE = 1e6;

const NONE: Readonly<Record<string, string>> = Object.freeze({});
