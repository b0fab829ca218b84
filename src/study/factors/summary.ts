import { basename } from 'node:path';
import { combinationName } from '../../scenario/changes/factors.js';
import { confoundedWith, definingWords, LETTERS } from '../../scenario/changes/fractions.js';
import { findings, finite, judgedIn, standOf, windowResult } from '../compare/stand.js';
import { compared, zoneOf } from '../compare/verdict.js';
import { type Zones, zoneShare } from '../compare/zones.js';
import { headOf } from '../head.js';
import { defined } from '../lists.js';
import { offered } from '../priced/offer.js';
import { plannedEnd } from '../programme/dates.js';
import { planned } from '../sample/planned.js';
import { familyLevel } from '../statistics/difference.js';
import { amount } from '../statistics/skewed-interval.js';
import { bestOf, nearestOf } from './best.js';
import { contrastsOf, numbersAt } from './contrasts.js';
import { effectIn } from './effects.js';
import type { Gathered } from './gathered.js';
import { effectName } from './named.js';
import type {
  CombinationResult,
  DesignResult,
  FactorsAsked,
  FactorsInWeeks,
  FactorsResults,
  PairResult,
} from './results.js';
import { factorsSentence } from './sentence.js';

/**
 * What was gathered as results. The same readings give the same results, wherever they were made.
 * @param variantOf number of the variant of each combination; 0 is the scenario as it is
 */
export function summariseFactors(
  gathered: Gathered,
  variantOf: readonly number[],
  asked: FactorsAsked,
  zones: Zones,
): FactorsInWeeks {
  const { variants } = gathered,
    { window, measures: defs } = gathered.settle(),
    rows = gathered.all(),
    base = defined(variants[0]),
    { factors, fraction, level } = asked,
    levelsOf = asked.combinations.map(({ levels }) => levels);
  const values = rows.map((of) => defs.map((_, m) => of.map((row) => row.values[m] ?? NaN))),
    valuesOf = (variant: number, m: number): readonly number[] => defined(values[variant]?.[m]),
    ofAll = (m: number) => variantOf.map((variant) => valuesOf(variant, m));
  const measures = defs.map(({ id, name, unit, better }, m) => ({
    ...{ id, name, unit, better },
    zone: zoneOf(valuesOf(0, m), zoneShare(zones, id)),
  }));
  const contrasts = contrastsOf(
      factors.map(({ levels }) => levels.length),
      levelsOf,
      fraction,
    ),
    intervals = measures.length * (contrasts.length + variantOf.filter((variant) => variant > 0).length),
    eachLevel = familyLevel(level, intervals);

  const effects = contrasts.map((contrast) => {
    const { kind, factors: of, from, to, word, mixedWith } = contrast;
    return {
      ...{ kind, factors: of, from, to, word, mixedWith },
      name: effectName(factors, contrast),
      measures: measures.map((measure, m) =>
        effectIn(measure, contrast, ofAll(m), Math.abs(amount(valuesOf(0, m), level).mean), eachLevel),
      ),
    };
  });
  const combinations = levelsOf.map((levels, c): CombinationResult => {
    const v = defined(variantOf[c]);
    return {
      ...standOf(
        { ...defined(variants[v]), name: combinationName(factors, levels) },
        defined(rows[v]),
        level,
      ),
      changes: defined(asked.combinations[c]).changes,
      levels,
      isBase: v === 0,
      ...offered(asked.offers, defined(variants[v]).key),
      compared: measures.map((measure, m) => compared(measure, valuesOf(0, m), valuesOf(v, m), eachLevel)),
    };
  });
  const baseResult = {
      ...standOf(base, defined(rows[0]), level),
      values: measures.map(({ id }, m) => ({ measure: id, value: amount(valuesOf(0, m), eachLevel) })),
    },
    hasBase = variantOf.includes(0),
    best = bestOf(ofAll(0), eachLevel),
    replications = defined(rows[0]).length;
  const found: Omit<FactorsResults, 'answer'> = {
    ...headOf('factors', asked),
    factorsFile: basename(asked.factorsFile),
    replications,
    ...{ eachLevel, intervals, measures, effects, combinations },
    window: windowResult(base, window),
    plannedEnd: plannedEnd(planned(base.scenario, base.model)),
    constraint: null,
    weakest: null,
    design: designResult(asked),
    factors: factors.map((factor, f) => ({ letter: LETTERS.charAt(f), ...factor })),
    pairs: pairsOf(
      asked,
      effects.filter(({ kind }) => kind === 'together').map(({ factors: two }) => two),
      measures.map(({ id }) => id),
      (m) => ofAll(m).map((each) => amount(each, level)),
    ),
    base: baseResult,
    best: { ...best, nearest: nearestOf(best, levelsOf, levelsOf[variantOf.indexOf(0)]) },
    findings: [...(hasBase ? [] : [baseResult]), ...combinations].flatMap((each) =>
      findings(each, replications),
    ),
    runs: [...(hasBase ? [] : [null]), ...variantOf.keys()].flatMap((combination) =>
      defined(rows[combination === null ? 0 : defined(variantOf[combination])]).map(
        ({ replication, outcome, values: row }) => ({
          ...{ combination, replication, outcome },
          values: row.map(finite),
        }),
      ),
    ),
  };
  return {
    results: { ...found, answer: factorsSentence(found) },
    judged: judgedIn(base, window),
  };
}

function designResult({ factors, fraction, combinations }: FactorsAsked): DesignResult {
  const levels = factors.map((factor) => factor.levels.length),
    of = levels.reduce((all, many) => all * many, 1),
    sizes = { run: combinations.length, of };
  if (fraction === null)
    return {
      ...{ name: 'full', ...sizes, notation: levels.join(' x '), resolution: null },
      ...{ generators: [], defining: '', confounded: [] },
    };
  const words = factors.flatMap((_, f) => [
    LETTERS.charAt(f),
    ...factors.slice(f + 1).map((__, g) => LETTERS.charAt(f) + LETTERS.charAt(f + 1 + g)),
  ]);
  const strings = words
    .sort((a, b) => a.length - b.length || (a < b ? -1 : 1))
    .map((word) => [word, ...confoundedWith(word, fraction)]);
  return {
    name: fraction.name,
    ...sizes,
    notation: `2^(${factors.length}-${fraction.generators.length})`,
    resolution: fraction.resolution,
    generators: fraction.generators.map(([letter, word]) => `${letter} = ${word}`),
    defining: ['I', ...definingWords(fraction)].join(' = '),
    confounded: strings
      .filter(([word], i) => !strings.slice(0, i).some((before) => before.includes(word ?? '')))
      .map((string) => string.join(' + ')),
  };
}

function pairsOf(
  { factors, combinations }: FactorsAsked,
  shown: readonly (readonly number[])[],
  ids: readonly PairResult['means'][number]['measure'][],
  ofMeasure: (m: number) => readonly { readonly n: number; readonly mean: number }[],
): PairResult[] {
  const levelsOf = combinations.map(({ levels }) => levels),
    means = ids.map((_, m) => ofMeasure(m));
  const distinct = [...new Map(shown.map(([f = 0, g = 0]) => [`${f} ${g}`, [f, g] as const])).values()];
  return distinct.map(([f, g]) => ({
    factors: [f, g],
    means: ids.map((measure, m) => ({
      measure,
      values: defined(factors[f]).levels.map((_, i) =>
        defined(factors[g]).levels.map((__, j) => {
          const all = numbersAt(levelsOf, [
            [f, i],
            [g, j],
          ]).map((c) => defined(means[m]?.[c]));
          return all.some(({ n }) => n === 0)
            ? null
            : all.reduce((sum, { mean }) => sum + mean, 0) / all.length;
        }),
      ),
    })),
  }));
}
