import type { TryIt } from '../../report/page/try-it.js';
import { scenarioWith } from '../../scenario/data.js';
import { sayPath } from '../../scenario/file/problem.js';
import { moved } from '../../scenario/levers.js';
import type { Scenario } from '../../scenario/types/scenario.js';
import { baseWindow, measuresOf } from '../../study/compare/measures.js';
import type { ComparedMeasure } from '../../study/compare/results.js';
import { compared, zoneOf } from '../../study/compare/verdict.js';
import { USUAL_ZONE } from '../../study/compare/zones.js';
import { Replicator } from '../../study/run/replicator.js';
import { withConstraint } from '../../study/simulate/with-constraint.js';
import { tenDigits } from '../../study/ten-digits.js';
import { Build } from './build.js';
import type { Reported, Told } from './messages.js';

/** Replications after which something is told for the first time; then after twice as many, and so on. */
const FIRST = 5;

/** The report's build with other numbers, set against the report's build as it is. */
export class Tries {
  private readonly base: Build;
  private same = 0;
  private compared = 0;

  constructor(
    private readonly tryIt: TryIt,
    private readonly report: Reported,
    private readonly tell: (told: Told) => void,
  ) {
    const { scenario, why } = this.scenarioOf([]);
    if (scenario === undefined) throw new Error(`page: expected a sound scenario, got ${why.join('; ')}`);
    this.base = new Build('report', scenario, report);
  }

  /** Tries these numbers of the levers, until `signal` ends it. */
  async with(id: number, numbers: readonly number[], signal: AbortSignal): Promise<void> {
    const { scenario, why } = this.scenarioOf(numbers);
    if (scenario === undefined) {
      this.tell({ kind: 'refused', id, why });
      return;
    }
    const { seed, replications } = this.report,
      options = { seed, workers: 1, signal },
      replicator = new Replicator(options),
      changed = this.buildOf(scenario, id);
    if (changed === undefined) return;
    for (let to = Math.min(FIRST, replications); ; to = Math.min(2 * to, replications)) {
      await this.base.runTo(Math.max(to, this.base.readings.length), replicator);
      this.compareWithReport();
      await changed.runTo(to, replicator);
      this.tell({ kind: 'seen', id, done: to, rows: rowsOf(this.base, changed, to, this.report.level) });
      if (to === replications) break;
    }
    const results = await withConstraint(changed.simulated.value, { scenario, ...options });
    this.tell({ kind: 'results', id, results });
  }

  private buildOf(scenario: Scenario, id: number): Build | undefined {
    try {
      return new Build('changed', scenario, this.report);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      this.tell({ kind: 'refused', id, why: [error.message] });
      return undefined;
    }
  }

  private scenarioOf(numbers: readonly number[]): {
    readonly scenario: Scenario | undefined;
    readonly why: readonly string[];
  } {
    const { levers } = this.tryIt;
    const value = numbers.reduce((changed, to, i) => {
      const lever = levers[i];
      return lever === undefined || to === lever.now ? changed : moved(changed, lever, to);
    }, this.tryIt.value);
    const { scenario, findings } = scenarioWith(this.tryIt, value);
    return { scenario, why: findings.map(({ path, wanted }) => `${sayPath(path)}: expected ${wanted}`) };
  }

  /** Whether this browser comes to the digits of the report, replication by replication. */
  private compareWithReport(): void {
    const { readings } = this.base,
      { runs } = this.report;
    for (; this.compared < readings.length; this.compared++) {
      const here = readings[this.compared],
        there = runs[this.compared];
      const pairs = [
        [here?.shipped, there?.shipped],
        [here?.wip, there?.wip],
        [here?.leadMeanDays, there?.leadMeanDays],
        [here?.leadP90Days, there?.leadP90Days],
      ];
      if (pairs.every(([a, b]) => written(a) === written(b))) this.same++;
    }
    this.tell({ kind: 'agrees', done: this.compared, same: this.same });
  }
}

/** As results.json writes a value; a missing one as none. */
const written = (value: number | null | undefined): number | null =>
  value == null || !Number.isFinite(value) ? null : tenDigits(value);

/** The measures of `compare`, over the first so many replications; each interval for itself at `level`. */
export function rowsOf(base: Build, changed: Build, replications: number, level: number): ComparedMeasure[] {
  const readings = base.readings.slice(0, replications),
    other = changed.readings.slice(0, replications),
    window = baseWindow(base.variant, readings);
  return measuresOf(base.variant, window).map((measure) => {
    const values = readings.map(measure.of(base.variant)),
      zone = zoneOf(values, USUAL_ZONE);
    return compared({ ...measure, zone }, values, other.map(measure.of(changed.variant)), level);
  });
}
