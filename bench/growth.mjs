// Time per completion and of planning, of the reference line with 22, 220 and 2,200 stations, in turn:
// `npm run bench:growth`.
import { engineLine, plannedLine } from './engine-line.mjs';

const SIZES = [22, 220, 2200],
  ROUNDS = 5,
  /** Completions of a timed run, about, of a line that is full. */
  COMPLETIONS = 6e6;
const median = (values) => values.toSorted((a, b) => a - b)[values.length >> 1],
  /** Processor time of this process, seconds: other work of the machine counts for less than by the clock. */
  seconds = () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1e6;
  };

const all = SIZES.map((stations) => {
  const before = seconds();
  plannedLine(1, 1, stations);
  return { stations, planned: seconds() - before, times: [] };
});
for (let round = 0; round <= ROUNDS; round++)
  for (const { stations, times } of round % 2 === 0 ? all : all.toReversed()) {
    // The line fills in some hours a station; what is inside then is not counted, and does not matter.
    const hours = Math.ceil(COMPLETIONS / stations + 3 * stations);
    plannedLine(hours, 0, stations);
    const before = seconds(),
      { completions } = engineLine(hours, 0, round, stations),
      time = (seconds() - before) / completions;
    if (round > 0) times.push(time);
  }
const [first] = all;
for (const { stations, planned, times } of all)
  console.log(
    `${String(stations).padStart(5)} stations: read and compiled in ${planned.toFixed(2)} s, ` +
      `${(median(times) * 1e9).toFixed(0)} ns a completion, ` +
      `${median(times.map((time, round) => time / first.times[round])).toFixed(2)} times those of ${SIZES[0]}`,
  );
