import { readFileSync } from 'node:fs';
import { it } from 'vitest';
import { upset } from '../src/study/loads/upset.js';
import { weightsOver, wholeCycles } from '../src/study/loads/weights.js';
import { built, scenarioBuilt } from './statistics/built.js';

const text = (f: string) => readFileSync('/tmp/wt-loads-scratch/s/' + f + '.yaml', 'utf8');
function series(yaml: string, cap: number, rate: number, weeks: number) {
  const y = yaml
    .replace(/capacity: \d+/, `capacity: ${cap}`)
    .replace(/most: 8/, `most: ${cap}`)
    .replace(/least: 8/, `least: ${cap}`)
    .replace(/places: 8/, `places: ${cap}`)
    .replace(
      /programme: .*/,
      `programme: { start: 2027-03-01, zone: UTC, until: ${new Date(Date.UTC(2027, 2, 1) + weeks * 7 * 864e5).toISOString().slice(0, 10)}, rate: { per day: ${rate} } }`,
    );
  const m = built.compile(scenarioBuilt(y));
  return built.observe(built.simulate(built.prepare(m), '1', 1), 1).shippedOn;
}
function est(s: Int32Array, off: number, W: number, boxes: number[], rate: number) {
  const days = 5 * W,
    k = weightsOver(days, boxes);
  let ks = 0,
    kr = 0;
  for (let d = 0; d < 7 * W; d++) {
    const x0 = 5 * Math.floor(d / 7) + Math.min(5, d % 7),
      x1 = 5 * Math.floor(d / 7) + Math.min(5, (d % 7) + 1);
    const w = k(x0, x1);
    ks += w * (s[off + d] ?? 0);
    kr += w * rate * (x1 - x0);
  }
  return rate * days * (1 - ks / kr);
}
it('t', () => {
  for (const [f, way] of [
    ['truck', 20 / 24],
    ['oven', 0.5],
  ] as const) {
    const yaml = text(f);
    for (const [cap, W] of [
      [6, 6],
      [10, 6],
      [4, 6],
      [6, 8],
      [10, 8],
      [10, 12],
      [10, 26],
      [20, 12],
      [20, 26],
    ] as const) {
      let worst = 0,
        at = 0,
        within = 0,
        n = 0,
        ups: string[] = [];
      for (let rate = 1.7; rate <= 2.65; rate += 0.05) {
        const r = Number(rate.toFixed(3)),
          s = series(yaml, cap, r, 60),
          days = 5 * W,
          c = cap / r;
        const boxes = wholeCycles([c], { days, week: 5 });
        if (!boxes) continue;
        const u = upset(
          [{ what: '', units: cap, cycleDays: c, isTimed: false, underWayDays: way, step: 0 }],
          weightsOver(days, boxes),
          { days, cells: days, perDay: r },
          { days: 5, share: 1 / 3 },
        );
        let w = 0;
        for (let start = 20; start + W <= 58; start += 3) {
          const e = Math.abs(est(s, 7 * start, W, boxes, r));
          n++;
          if (e <= u + 1e-9) within++;
          w = Math.max(w, e);
          if (e > worst) {
            worst = e;
            at = r;
          }
        }
        ups.push(`${u.toFixed(1)}/${w.toFixed(1)}`);
      }
      console.log(f, cap, W, `worst ${worst.toFixed(2)} at ${at} within ${within}/${n}`, ups.join(' '));
    }
  }
}, 300000);
