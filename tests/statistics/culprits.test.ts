import { describe, expect, it } from 'vitest';
import type { Thing } from '../study/constraint/build.js';
import { BUILDS } from '../study/constraint/builds.js';
import { SLOW } from './agree.js';
import { built, scenarioBuilt } from './built.js';

const SEEDS = 20,
  REPLICATIONS = 4;

describe(
  'what stops a build, tried on builds of which it is known, with decoys that are busy or full',
  SLOW,
  () => {
    it.each(BUILDS.map((build) => [`${build.bound}, ${build.culprit.name}`, build] as const))(
      'is %s in 20 of 20 seeds',
      async (_, { yaml, culprit, accepted }) => {
        const scenario = scenarioBuilt(yaml),
          right = [culprit, ...accepted].map(nameOf),
          named: string[] = [];
        for (let seed = 1; seed <= SEEDS; seed++) {
          const { constraint } = await built.simulateStudy({
            scenario,
            file: 'check.yaml',
            replications: REPLICATIONS,
            seed: `seed ${seed}`,
            workers: 1,
          });
          named.push(
            constraint?.outcome === 'rate asked'
              ? nameOf({ kind: 'release', name: culprit.name })
              : constraint?.culprit == null
                ? 'nothing'
                : nameOf(constraint.culprit.thing),
          );
        }
        expect(named.filter((each) => !right.includes(each))).toEqual([]);
      },
    );
  },
);

const nameOf = ({ kind, name }: Thing): string => `${kind} ${name}`;
