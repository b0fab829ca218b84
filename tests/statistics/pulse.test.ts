import { describe, it } from 'vitest';
import { expectAgreement, observations, perHour, SLOW } from './agree.js';
import { exponential } from './line.js';

function pulseLine(stations: number, taktHours: number, hours: number): string {
  const names = Array.from({ length: stations }, (_, i) => `s${i + 1}`);
  return `
scenario: pulse
programme: { arrivals: saturated, length: ${hours} h, warm up: 1000 h }
sites: { hall: { stations: { ${names.map((name) => `${name}: {}`).join(', ')} } } }
pulse lines: { line: { stations: [${names.join(', ')}], takt: ${taktHours} h } }
route:
${names.map((name) => `  - { step: do ${name}, at: ${name}, work: ${exponential(1)} }`).join('\n')}
`;
}

describe('a saturated pulse line with exponential work', SLOW, () => {
  it.each([2, 4, 8])(
    'of %i stations and no takt moves with the longest of them: (1 + 1/2 + ... + 1/N) / mu',
    (stations) => {
      // Order statistics of the exponential: Renyi 1953; any text on probability.
      const mean = Array.from({ length: stations }, (_, i) => 1 / (i + 1)).reduce((a, b) => a + b, 0);
      const seen = observations(pulseLine(stations, 0, 8000));
      expectAgreement(
        seen.map(({ pulseLines }) => pulseLines[0].minutesBetween / 60 / pulseLines[0].moves),
        mean,
        0.01,
      );
      expectAgreement(seen.map(perHour), 1 / mean, 0.01);
    },
  );

  it('of one station and takt T moves every E max(T, X) = T + exp(-mu T) / mu, and is late with chance exp(-mu T)', () => {
    const seen = observations(pulseLine(1, 1.5, 12_000));
    expectAgreement(
      seen.map(({ pulseLines }) => pulseLines[0].minutesBetween / 60 / pulseLines[0].moves),
      1.5 + Math.exp(-1.5),
      0.01,
    );
    expectAgreement(
      seen.map(({ pulseLines }) => pulseLines[0].late / pulseLines[0].moves),
      Math.exp(-1.5),
      0.02,
    );
    expectAgreement(
      seen.map(({ pulseLines }) => pulseLines[0].lateMinutes[0] / 60 / pulseLines[0].late),
      1,
      0.02,
    );
  });
});
