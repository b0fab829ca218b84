import { describe, expect, it } from 'vitest';
import { resultsTable } from '../../../src/report/terminal/simulate.js';
import { sampleResults } from '../samples/results.js';

describe('results in the terminal', () => {
  it('give every figure with its interval, then the findings', () => {
    expect(resultsTable(sampleResults({ stations: 6, weeks: 20 }))).toMatchInlineSnapshot(`
      "No. Expect 3.4 a day, not 4.

      How sure: None of 40 simulated builds ships 4 a day; average 3.29 to 3.47 (95 % sure).
      What stops it: The station top coat booth 6. One place more at top coat booth 6 brings 0.31 a day
        (0.27 to 0.35). Of 3 other things tried, next best: one hour of overtime a day in “paint shifts”
        (23:30 to 00:30), 0.20 (0.16 to 0.24).
      What to do: Begin with one place more at top coat booth 6 (price not given): 0.31 of the 0.62
        missing. A unit costs 12,300 EUR today (12,200 to 12,500); rework is 830 EUR of it.
      By when: Last unit by 18 April 2028, four times in five; planned 18 July 2027. By 14 April 2028, at
        even odds. So the plan is more likely missed.
      Weakest guess: The scenario does not say where any of its inputs comes from.
      What else would help: rateproof reliefs rescue-tender.yaml
      Besides: Intervals cover chance, not wrong inputs. Other pages try other builds: their figures
        differ a little.

      In full: No: four a day does not hold; from 7 June 2027 the build ships 3.38 a day (95 % interval
        3.29 to 3.47, 40 replications), and the top coat booth stops it.
      40 builds tried, seed spring

      measure                                                mean  between (95 %)
      -----------------------------------------------  ----------  ------------------------
      rate asked, units a working day                           4  plan
      rate held, units a working day                         3.38  3.29 to 3.47
      shipped over the whole run, units a working day        2.96  2.91 to 3.01
      units inside, all sites and lanes                      61.4  59.5 to 63.3
        coachworks north                                     12.5  12.0 to 13.0
        paint and finishing works                            26.1  25.1 to 27.1
        final plant                                          17.2  16.5 to 17.9
        coachworks to paint (lane)                           3.20  3.07 to 3.33
        paint to final plant (lane)                          2.40  2.30 to 2.50
      lead time of half of the units, days                   30.2  29.7 to 30.7
      lead time of nine in ten units, days                   46.8  45.4 to 48.2
      right first time at inspections, %
        weld cab floor and tunnel 1 inspection               95.1  94.3 to 95.9
        weld cab floor and tunnel 1 inspection               91.7  90.9 to 92.5
        seal seams underbody 2 inspection                    90.5  89.7 to 91.3
        prime booth 3 inspection                             86.1  85.3 to 86.9
        bake oven 4 inspection                               81.9  81.1 to 82.7
        bake oven 4 inspection                               77.9  77.1 to 78.7
      right first time over the whole route, %               43.4  42.2 to 44.6
      cost of a unit shipped, EUR                          12,340  12,180 to 12,500
        of which rework                                       830  730 to 930
      last unit out, half of the builds                2028-04-14  2028-04-12 to 2028-04-16
      last unit out, four of five builds               2028-04-18  2028-04-16 to 2028-04-20
      last unit out, 19 of 20 builds                    not known  no interval
      last unit out, 19 of 20 builds: a 95 % interval needs 72 replications, there are 40

      tried under the same chance, 20 builds                         a day more  between, all together
      -------------------------------------------------------------  ----------  ---------------------
      one place more at top coat booth 6                                   0.31  0.27 to 0.35
      one hour of overtime a day in "paint shifts" (23:30 to 00:30)        0.20  0.16 to 0.24
      one truck more on coachworks to paint                                0.01  -0.03 to 0.05
      one person more in painters (paint and finishing works)             -0.02  -0.06 to 0.02

      from averages to what is shipped              a day  between (95 %)
      -------------------------------------------  ------  ----------------
      averages allow the station top coat booth 6     4.2
        short of crew                               -0.75  -0.78 to -0.72
        blocked, no room ahead                     -0.120  -0.130 to -0.110
        changeovers beyond the average              +0.05  0.03 to 0.07
      shipped                                        3.38  3.29 to 3.47

      used most, % of its time (95 %)   judged 2027-06-07 to 2027-07-12  whole run
      --------------------------------  -------------------------------  -------------------
      top coat booth 6 (station)        93.7 (92.8 to 94.6)              93.0 (92.0 to 94.0)
      electricians (crew)               91.0 (90.1 to 91.9)              90.0 (89.0 to 91.0)
      seal seams underbody 2 (station)  88.3 (87.4 to 89.2)              87.0 (86.0 to 88.0)

      The outage "new paint line" (2027-08-09 to 2027-08-20) puts the build 40 units behind.

      finding: 4 a day is not held: 3.38 a day are shipped while it is asked (40 of 40 builds)"
    `);
  });

  it('count what the scenario says of its values, where it says something', () => {
    const one = { path: 'programme.quantity', words: 'the quantity', value: '420', note: null };
    const results = {
      ...sampleResults({ stations: 3 }),
      assumptions: [
        { ...one, basis: 'measured' as const },
        { ...one, basis: 'guess' as const },
      ],
    };
    expect(resultsTable(results)).toContain('seed spring\nassumptions: 1 measured, 0 estimated, 1 guessed\n');
    expect(resultsTable(sampleResults({ stations: 3 }))).not.toContain('assumptions');
  });

  it('are at most 100 columns wide, whatever the names', () => {
    const names = (index: number): string =>
      `final assembly station for the rear body, left side and roof module number ${index + 1}`;
    const results = sampleResults({ stations: 60, names });
    const wordy = {
      ...results,
      answer: { ...results.answer, sentence: `${'No. '.repeat(60)}${'x'.repeat(150)}` },
      findings: [
        {
          kind: 'gridlock' as const,
          text: `${names(1)} waits for ${names(2)} and ${names(3)}`,
          replications: 3,
        },
      ],
    };
    for (const line of resultsTable(wordy).split('\n'))
      expect(Array.from(line).length, line).toBeLessThanOrEqual(100);
  });

  it('say that there is no interval with one replication', () => {
    const text = resultsTable(sampleResults({ stations: 3, replications: 1 }));
    expect(text).toContain('1 build tried, seed spring');
    expect(text).toMatch(/rate held, units a working day +3\.38 {2}no interval\n/);
    expect(text).not.toContain('between (');
  });

  it('leave out what the results do not have', () => {
    const results = sampleResults({ stations: 3 });
    const text = resultsTable({
      ...results,
      inspections: [],
      rty: null,
      bottlenecks: [],
      constraint: null,
      lastUnit: [],
      findings: [],
      answer: { ...results.answer, askedPerDay: null, heldPerDay: null, asked: null, held: null },
    });
    expect(text).not.toMatch(/right first|used most|tried under|averages|last unit|finding|rate asked/);
    expect(text).toMatch(/shipped over the whole run, units a working day +2\.96 {2}2\.91 to 3\.01/);
  });
});
