/** A word, how it is found on a page, and what it means there. */
type Definition = readonly [word: string, seen: RegExp, meaning: string];

/** Words of the trade and of statistics that a page may use; a page explains those that it uses. */
const DEFINITIONS: readonly Definition[] = [
  [
    'build, replication',
    /\bbuilds?\b|\breplications?\b/i,
    'the whole programme gone through once by the model, with random times, defects and failures of its ' +
      'own; all are repeated from the same seed',
  ],
  [
    'between .. and .., 95 % sure, 95 % CI',
    /\bCI\b|\bbetween [-\d]|% sure/,
    'the interval in which the mean over endlessly many builds (or times clocked) lies, in 95 of 100 such ' +
      'studies; where many figures are told together each has a wider one (99 % and more), so that all ' +
      'hold together with 95 %',
  ],
  [
    'input and chance, drawn anew',
    /drawn anew|is input|how much chance/i,
    'a time or chance that was measured is known only as far as its number of values tells. It is drawn ' +
      'anew, as other values might have shown it, for every two builds: what differs between such pairs is ' +
      'input and chance, what differs within them chance alone. Shares are of the variance behind it',
  ],
  [
    'holds, falls short, not settled',
    /\bheld\b|falls? short|not settled|\bholds(?! together)\b/i,
    'surely at least half of the builds (or the share asked for) ship what is asked, and as much can be ' +
      'shipped in the long run; surely not; more builds are needed to tell',
  ],
  [
    'ships what is asked or at most 2 % less, keeps up',
    /ships? what is asked|, or at most \d % less|keeps? up/i,
    'no more than 2 % of the units asked for in the weeks judged are missing, and nothing stands still',
  ],
  [
    'weeks judged',
    /weeks judged/i,
    'those in which the highest rate is asked and the floor has had one mean lead time to fill',
  ],
  [
    'arithmetic, averages',
    /arithmetic|averages/i,
    'what mean times, hours and people would allow without any chance, waiting or want of room',
  ],
  [
    'log',
    /\bthe log\b/,
    'the record of the floor: when each unit came in, reached, started and left a step, what was found on ' +
      'it, and when it was shipped',
  ],
  [
    'in its band, agrees',
    /in (?:its|their) bands?|in the band of the model/i,
    'the band is where one build of the model lies, all measures together with the level given, so each by ' +
      'itself with more; a log in it is not against the model, which is no proof that the model is right',
  ],
  [
    'likely late',
    /likely (?:be )?late/i,
    'late in more than half of the builds; late by so many days in half of the builds in which it is late',
  ],
  ['stops it', /stops it/i, 'one more of it was tried, in the same builds, and surely brought units'],
  [
    'used most',
    /used most/i,
    'active for the largest share of its time on shift: a hint at what stops the build, no proof',
  ],
  [
    'blocked, starved, short of',
    /\bblocked\b|\bstarved\b|\bshort of\b/i,
    'a place holds a finished unit with no room ahead; has none to work on; waits for people, parts or ' +
      'carriers',
  ],
  [
    'same chance, paired',
    /same chance|\bpair(?:s|ed|ing)?\b|common random numbers|same random events/i,
    'two plans meet the same random events, build by build (common random numbers), so that what is left ' +
      'between them is the change',
  ],
  [
    'effect, by itself, together',
    /(?:beyond|than) (?:the|their) sum/i,
    'what a factor changes from one level to another, on average over the levels of all others; what two ' +
      'change at once beyond the sum of what each does',
  ],
  [
    'does not matter',
    /not matter|that matters|indifference zone/i,
    'a difference below the zone that the study gives, usually 1 % of the value',
  ],
  [
    'at even odds, four times in five, P50, P80, P90',
    /\bP\d\d\b|half of the (?:builds|units)|even odds|times in five/,
    'the value that half, 80 or 90 in 100 of the builds or units do not pass',
  ],
  [
    'set, step',
    /cheaper set|set of fewer changes|no set\b|set of the answer/i,
    'changes that the scenario names, made together; a step is one of them, as often as the set has it',
  ],
  [
    'fresh replications',
    /fresh (?:replications?|builds?)/i,
    'builds that had no part in choosing what they tell of: what is chosen among many looks better in the ' +
      'builds by which it was chosen than it is',
  ],
  [
    'distribution, lognormal, gamma, uniform ..',
    /\blognormal\b.*distribution|distributions? fits?\b|distributions? that/i,
    'how often times of each length come; a lognormal, gamma or Weibull has a tail of long times, a ' +
      'uniform, triangular or pert a longest time',
  ],
  [
    'p, Anderson-Darling',
    /Anderson-Darling/,
    'how often times that come from the distribution itself would fit it as badly; below 0.05 it is rejected',
  ],
  [
    'AIC',
    /\bAIC\b/,
    'how badly a distribution fits, with a charge for each of its parameters (Akaike); the lowest is best',
  ],
  [
    'three points',
    /three points/i,
    'a shortest, likeliest and longest time with the mean and the spread of a handful of times',
  ],
  ['WIP', /\bWIP\b/, 'units begun and not yet shipped'],
  ['lead time', /lead time/i, 'from the release of a unit until it is shipped, in days of 24 hours'],
  [
    'first-time-through, RTY',
    /first.time.through|\bRTY\b|right first time/i,
    'the share of units that pass an inspection at the first visit; over the whole route all of these ' +
      'multiplied',
  ],
  [
    'gridlock',
    /gridlock|standstill|stood still/i,
    'units wait for each other in a ring, so that none of them can ever go on',
  ],
];

/** Those whose word is in one of the texts of a page. */
export function definitionsFor(
  texts: readonly string[],
): { readonly word: string; readonly meaning: string }[] {
  const all = texts.join('\n');
  return DEFINITIONS.filter(([, seen]) => seen.test(all)).map(([word, , meaning]) => ({ word, meaning }));
}
