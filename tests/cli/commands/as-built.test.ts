import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { contents, rateproof, scenarioFolder } from '../run-cli.js';
import { runHere } from '../run-here.js';

const folder = scenarioFolder();
writeFileSync(join(folder, 'what-ifs.yaml'), 'faster: { changes: { route.build.work: 110 min } }\n');
const FEW = ['--replications', '2', '--workers', '1'];

// Most tests of commands run them here: this is what lets them.
it.each<[string, string[]]>([
  ['help', ['--help']],
  ['check', ['check', 'tight.yaml']],
  ['check', ['check', 'wrong.yaml']],
  ['map', ['map', 'slack.yaml']],
  ['schema', ['schema']],
  ['simulate', ['simulate', 'tight.yaml', ...FEW]],
  ['simulate', ['simulate', 'slack.yaml', ...FEW, '--json', '--journey', '3']],
  ['compare', ['compare', 'slack.yaml', 'what-ifs.yaml', ...FEW, '--out', 'OUT']],
  ['rate', ['rate', 'slack.yaml', '--from', '3', '--to', '5', '--step', '1', '--replications', '4']],
  ['reliefs', ['reliefs', 'tight.yaml', '--replications', '4', '--quiet', '--json']],
  ['reach', ['reach', 'tight.yaml']],
  ['buffers', ['buffers', 'slack.yaml', '--budget', '2']],
  ['merge', ['merge', 'none']],
  ['nothing known', ['simulat', 'slack.yaml']],
])('%s says, writes and ends with the same in a process of its own as here', async (_, args) => {
  const [first = ''] = args,
    to = (name: string): string[] => args.map((word) => (word === 'OUT' ? name : word)),
    alike = ({ stdout, stderr, code }: Awaited<ReturnType<typeof runHere>>, name: string): unknown => ({
      code,
      stdout: stdout.replaceAll(name, 'OUT'),
      stderr: stderr.replaceAll(name, 'OUT'),
    });
  const own = `${first}-own`,
    here = `${first}-here`;
  expect(alike(await runHere(folder, ...to(here)), here)).toEqual(
    alike(await rateproof(folder, ...to(own)), own),
  );
  if (args.includes('OUT')) expect(contents(join(folder, here))).toEqual(contents(join(folder, own)));
});
