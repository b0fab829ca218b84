import { EXIT_CODES_HELP } from '../exit-code.js';

/** Texts of the help, each with its examples first. All data that comes with rateproof is invented. */
export const HELP = {
  main: `rateproof: will this build, spread over several plants, hold the new rate?

Examples:
  rateproof check line.yaml                     by arithmetic, at once: load of every station, crew, lane, feeder
  rateproof simulate line.yaml                  20 replications, the answer as a table
  rateproof simulate line.yaml --out out/line   the same, with pictures, a page and data in a new folder
  rateproof rate line.yaml --from 3 --to 6      the highest rate that holds, and when a ramp may reach it
  rateproof reliefs line.yaml                   which small change helps most, which number to measure next
  rateproof compare line.yaml what-ifs.yaml     the same for named changes of it, each against the scenario
  rateproof buffers line.yaml --budget 20       where 20 waiting places bring the most
  rateproof schema --out scenario.schema.json   lets an editor complete and check scenario files`,
  check: `rateproof check FILE: what each station, crew, lane and feeder could carry by arithmetic, without chance or blocking

Examples:
  rateproof check line.yaml
  rateproof check line.yaml --json > capacity.json`,
  simulate: `rateproof simulate FILE: runs the build many times and says whether the rate holds, where it breaks, when it ends

Examples:
  rateproof simulate line.yaml
  rateproof simulate line.yaml --replications 100 --out out/line
  rateproof simulate line.yaml --precision 1% --of throughput,lead-time,cost
  rateproof simulate line.yaml --json --quiet > results.json`,
  merge: `rateproof merge DIR...: sums up the shards of a simulate or compare that was run in parts, to the very files that one run gives

Examples:
  rateproof simulate line.yaml --replications 100 --shard 1/4 --out out/shard-1    (and so on, here or on other machines)
  rateproof merge out/shard-1 out/shard-2 out/shard-3 out/shard-4 --out out/line`,
  rate: `rateproof rate FILE: the highest rate that holds, what stops it at each rate, and when a ramp may reach it

Examples:
  rateproof rate line.yaml --from 3 --to 6
  rateproof rate line.yaml --from 3 --to 6 --step 0.25 --sure "90 %" --out out/rate
  rateproof rate line.yaml --from 3 --to 6 --weeks 52 --ramp-to 5`,
  reliefs: `rateproof reliefs FILE: tries each small change by itself (a person, a place, a space, a truck more, work a tenth
shorter, an hour of overtime ...) and each guess and estimate low and high; ranks them by what they ship more

Examples:
  rateproof reliefs line.yaml
  rateproof reliefs line.yaml --rate 5 --out out/reliefs`,
  compare: `rateproof compare FILE WHATIFS: what named changes of the scenario do to rate, lead time, WIP, end and cost

Examples:
  rateproof compare line.yaml what-ifs.yaml
  rateproof compare line.yaml what-ifs.yaml --replications 100 --out out/what-ifs
  rateproof compare line.yaml what-ifs.yaml --shard 1/4 --out out/shard-1    (and so on, then rateproof merge)
  what-ifs.yaml: { second booth: { changes: [{ sites.hall.stations.booth.places: 2 }] } }`,
  buffers: `rateproof buffers FILE: shares waiting places out over buffers and banks, for the most throughput or the fewest places

Examples:
  rateproof buffers line.yaml --budget 20 --out out/places
  rateproof buffers line.yaml --target 4.2 --from present
  rateproof buffers line.yaml --budget 6 --at "colour booth" --at "weld bay"`,
  schema: `rateproof schema: the JSON Schema of scenario files

Examples:
  rateproof schema --out scenario.schema.json
  then, as the first line of a scenario: # yaml-language-server: $schema=./scenario.schema.json`,
  epilogue: `${EXIT_CODES_HELP}

Results go to stdout, everything else to stderr. All of it is about time and numbers only: paint booths, ovens, lifting,
road tests and overtime are governed by local codes and licensed practice.`,
} as const;
