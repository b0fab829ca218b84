import { describe, expect, it } from 'vitest';
import { reportFiles } from '../../../src/report/files/simulate.js';
import { sampleResults } from '../samples/results.js';

describe('files of a report', async () => {
  const files = await reportFiles(sampleResults({ stations: 6, weeks: 20 }));

  it('are results, pictures, page and tables', () => {
    expect([...files.keys()].sort()).toEqual([
      '01-throughput-by-week.png',
      '02-wip-by-site.png',
      '03-place-time.png',
      '04-bottlenecks.png',
      '05-lead-time.png',
      '06-buffers.png',
      '07-first-time-through.png',
      '08-shipped-against-plan.png',
      '09-journey.png',
      '10-changeovers.png',
      '11-crew-load.png',
      '12-outage-recovery.png',
      '13-cost-per-unit.png',
      '14-warm-up.png',
      '15-losses.png',
      '16-trials.png',
      'losses.csv',
      'report.html',
      'report.xlsx',
      'results.json',
      'runs.csv',
      'series.csv',
      'stations.csv',
      'trials.csv',
      'units.csv',
    ]);
  });

  it('have the same bytes for the same results', async () => {
    const again = await reportFiles(sampleResults({ stations: 6, weeks: 20 }));
    for (const [name, content] of files)
      expect(Buffer.from(content).equals(Buffer.from(again.get(name) ?? '')), name).toBe(true);
  }, 20_000);

  it('show every picture on the page too', () => {
    const html = String(files.get('report.html'));
    for (const name of files.keys())
      if (name.endsWith('.png')) expect(html).toContain(`data-picture="${name.slice(0, -4)}"`);
  });
});
