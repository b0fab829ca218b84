/**
 * Three samples, with what scipy 1.10.1 makes of them (scipy.optimize.minimize, Nelder-Mead from several
 * starts, on the log-densities of scipy.stats; the statistics by the formulas on its cumulative curves, and
 * scipy.stats.kstest). Beyond 6 digits the minimiser, not the likelihood, tells.
 */
export interface Reference {
  readonly name: string;
  readonly times: readonly number[];
  /** By kind: parameters, log-likelihood, A^2 and D. */
  readonly fits: Readonly<Record<string, { readonly [parameter: string]: number }>>;
}

export const REFERENCES: readonly Reference[] = [
  {
    // Hours between failures of the air conditioning of aircraft 7912 (F. Proschan, Technometrics 5, 1963; from memory).
    name: 'proschan',
    times: [
      23, 261, 87, 7, 120, 14, 62, 47, 225, 71, 246, 21, 42, 20, 5, 12, 120, 11, 3, 14, 71, 11, 14, 11, 16,
      90, 1, 16, 52, 95,
    ],
    fits: {
      exponential: {
        mean: 59.6,
        logLikelihood: -152.629667222139,
        square: 1.163122271214,
        most: 0.213167733071,
      },
      gamma: {
        shape: 0.811911629218,
        scale: 73.407004357979,
        logLikelihood: -152.167330737129,
        square: 0.653380465412,
        most: 0.169375198692,
      },
      lognormal: {
        mu: 3.358091225606,
        sigma: 1.319162923858,
        logLikelihood: -151.620814369779,
        square: 0.408293866803,
        most: 0.10475563373,
      },
      weibull: {
        shape: 0.85358734187,
        scale: 54.613447448471,
        logLikelihood: -151.936888699195,
        square: 0.552232392434,
        most: 0.153363168926,
      },
      uniform: { low: 1.0, high: 261.0, logLikelihood: -166.820448930466 },
      triangular: {
        low: 0.9999994641,
        likely: 1.0,
        high: 280.105028481185,
        logLikelihood: -158.87233632394,
        square: 9.021499681225,
        most: 0.381899708291,
      },
      pert: {
        low: 0.9999994641,
        likely: 0.9999994641,
        high: 411.262636590009,
        logLikelihood: -154.119927251722,
        square: 3.585209091729,
        most: 0.292466839529,
      },
    },
  },
  {
    // Millions of turns to failure of 23 ball bearings (J. Lieblein & M. Zelen 1956; from memory).
    name: 'bearings',
    times: [
      17.88, 28.92, 33.0, 41.52, 42.12, 45.6, 48.48, 51.84, 51.96, 54.12, 55.56, 67.8, 68.64, 68.64, 68.88,
      84.12, 93.12, 98.64, 105.12, 105.84, 127.92, 128.04, 173.4,
    ],
    fits: {
      exponential: {
        mean: 72.224347826087,
        logLikelihood: -121.434875980845,
        square: 2.811444482201,
        most: 0.306790224595,
      },
      gamma: {
        shape: 4.025414617997,
        scale: 17.942089073113,
        logLikelihood: -113.029281372169,
        square: 0.215365232617,
        most: 0.122971769266,
      },
      lognormal: {
        mu: 4.150454493894,
        sigma: 0.521649334046,
        logLikelihood: -113.128566737177,
        square: 0.188815035651,
        most: 0.089786954412,
      },
      weibull: {
        shape: 2.102058864468,
        scale: 81.878334312586,
        logLikelihood: -113.69129093232,
        square: 0.328609756052,
        most: 0.151087564268,
      },
      normal: {
        mean: 68.085912156532,
        sd: 40.536327119943,
        logLikelihood: -114.71864721842,
        square: 0.47565976564,
        most: 0.168370160881,
      },
      uniform: { low: 17.88, high: 173.4, logLikelihood: -116.075809836379 },
      triangular: {
        low: 17.879999679449,
        likely: 17.88,
        high: 187.375516979718,
        logLikelihood: -113.091504022364,
        square: 1.132557532001,
        most: 0.14092462993,
      },
      pert: {
        low: 15.634123109797,
        likely: 44.788423114732,
        high: 240.142783072848,
        logLikelihood: -112.882719029173,
        square: 0.259990526094,
        most: 0.124306067709,
      },
    },
  },
  {
    // Made up: a beta from 20 to 45, to a decimal.
    name: 'made',
    times: [
      35.3, 25.5, 41.1, 22.3, 26.1, 39.5, 26.6, 39.5, 34.6, 28.8, 25.3, 31.1, 23.1, 22.3, 28.3, 27.5, 38.2,
      32.6, 23.4, 37.8, 23.3, 32.5, 25.6, 26.0, 31.1, 31.0, 34.0, 32.6, 27.6, 37.4, 24.8, 29.2, 25.9, 35.3,
      36.9, 31.7, 29.0, 34.9, 29.5, 29.3,
    ],
    fits: {
      exponential: {
        mean: 30.4125,
        logLikelihood: -176.594148324386,
        square: 12.6454317395,
        most: 0.519655214731,
      },
      gamma: {
        shape: 34.151748761797,
        scale: 0.890510776872,
        logLikelihood: -122.342132407359,
        square: 0.386799221206,
        most: 0.092079669531,
      },
      lognormal: {
        mu: 3.40014172568,
        sigma: 0.171567993213,
        logLikelihood: -122.252185192964,
        square: 0.368430842657,
        most: 0.089748505335,
      },
      weibull: {
        shape: 6.307571088735,
        scale: 32.652786666641,
        logLikelihood: -123.98031819682,
        square: 0.594575898524,
        most: 0.115347191697,
      },
      normal: {
        mean: 30.41249991077,
        sd: 5.226049799726,
        logLikelihood: -122.903767040618,
        square: 0.474979259183,
        most: 0.095368999659,
      },
      uniform: { low: 22.3, high: 41.1, logLikelihood: -117.354274793436 },
      triangular: {
        low: 22.29999996125,
        likely: 22.3,
        high: 44.15391239851,
        logLikelihood: -118.045056751595,
        square: 2.273293346333,
        most: 0.112714048147,
      },
      pert: {
        low: 21.44099761969,
        likely: 27.351471362175,
        high: 50.580503488171,
        logLikelihood: -119.948363093687,
        square: 0.326392587276,
        most: 0.074198142826,
      },
    },
  },
];
