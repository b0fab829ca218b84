// The reference line as a hand-written loop: what this language can do at best when nothing is configurable.
// 22 stations of one place, buffers of 2, lognormal work (mean 1 h, cv 0.3), blocking after service, the
// first station never starved; 8 % of the inspections after the last station send the unit back to station
// 18, where rework goes first and its waiting space has no limit. Everything is a local or a typed array.
import { fillLognormal, seedState, uniform } from './lognormal-blocks.mjs';

const STATIONS = 22;
const LAST = STATIONS - 1;
const BACK_TO = STATIONS - 5; // station 18, counted from 1
const BUFFER = 2;
const SEND_BACK = 0.08;
const STARVED = 0,
  WORKING = 1,
  BLOCKED = 2;
const BLOCK = 2048; // work times drawn at once: 16 KB, stays in the nearest cache
const BINS = 8192,
  BINS_PER_HOUR = 20; // lead times up to 409.6 h, 3 minutes a bin

/** Value below which `share` of the counted lead times lie, hours; linear inside the bin. */
function quantile(counts, total, share) {
  let below = 0,
    bin = 0;
  while (bin < BINS - 1 && below + counts[bin] < share * total) below += counts[bin++];
  return (bin + (share * total - below) / counts[bin]) / BINS_PER_HOUR;
}

/**
 * Run the reference line for `warmUp` hours that count for nothing and then `hours` that do.
 *
 * Returns `completions` (finished tasks of all stations, warm-up included, since they take time too),
 * `throughput` (units an hour), `wip` (mean units inside), `leadTime` and `leadTimeP95` (hours), `working`,
 * `blocked`, `starved` (share of time, one entry a station) and the `seed`.
 */
export function tightLine(hours, warmUp, seed) {
  const chance = seedState(seed);
  const variance = Math.log(1 + 0.3 * 0.3),
    mu = -variance / 2,
    sigma = Math.sqrt(variance);
  const works = new Float64Array(BLOCK);
  let nextWork = BLOCK;

  // The heap of pending completions: times and stations side by side.
  const times = new Float64Array(STATIONS + 1),
    who = new Int32Array(STATIONS + 1);
  let pending = 0;

  const state = new Int8Array(STATIONS),
    since = new Float64Array(STATIONS),
    spent = new Float64Array(3 * STATIONS);
  const born = new Float64Array(STATIONS); // a unit is nothing but its hour of entry
  const waiting = new Float64Array(STATIONS * BUFFER),
    front = new Int8Array(STATIONS),
    queued = new Int8Array(STATIONS);
  let rework = new Float64Array(64),
    reworkFront = 0,
    reworkQueued = 0;
  const starts = new Int32Array(STATIONS + 1);
  let startCount = 1; // station 1 (index 0) starts the first unit

  const leadCounts = new Float64Array(BINS);
  let now = 0,
    stop = warmUp,
    measuring = false,
    completions = 0;
  let wip = 1,
    wipSince = 0,
    wipHours = 0,
    shipped = 0,
    leadHours = 0;
  let rootIsSpent = false;
  state[0] = WORKING;

  for (;;) {
    for (let k = 0; k < startCount; k++) {
      if (nextWork === BLOCK) {
        fillLognormal(works, chance, mu, sigma);
        nextWork = 0;
      }
      const station = starts[k],
        time = now + works[nextWork++];
      let at;
      if (rootIsSpent) {
        // the completion just handled gives its root to the first start
        rootIsSpent = false;
        const half = pending >> 1;
        at = 0;
        while (at < half) {
          const left = 2 * at + 1;
          // Smaller child by arithmetic (a branch here would be guessed wrong half the time).
          const child = left + (+(left + 1 < pending) & +(times[left + 1] < times[left]));
          const childTime = times[child];
          if (childTime >= time) break;
          times[at] = childTime;
          who[at] = who[child];
          at = child;
        }
      } else {
        at = pending++;
        while (at > 0) {
          const parent = (at - 1) >> 1,
            parentTime = times[parent];
          if (parentTime <= time) break;
          times[at] = parentTime;
          who[at] = who[parent];
          at = parent;
        }
      }
      times[at] = time;
      who[at] = station;
    }
    if (rootIsSpent) {
      // nothing started: the last entry moves into the root
      rootIsSpent = false;
      const time = times[--pending],
        station = who[pending],
        half = pending >> 1;
      let at = 0;
      while (at < half) {
        const left = 2 * at + 1;
        const child = left + (+(left + 1 < pending) & +(times[left + 1] < times[left]));
        const childTime = times[child];
        if (childTime >= time) break;
        times[at] = childTime;
        who[at] = who[child];
        at = child;
      }
      times[at] = time;
      who[at] = station;
    }
    startCount = 0;

    if (times[0] > stop) {
      // end of warm-up, then end of run
      now = stop;
      for (let i = 0; i < STATIONS; i++) {
        spent[state[i] * STATIONS + i] += now - since[i];
        since[i] = now;
      }
      wipHours += wip * (now - wipSince);
      wipSince = now;
      if (measuring) break;
      measuring = true;
      stop = warmUp + hours;
      spent.fill(0);
      leadCounts.fill(0);
      wipHours = 0;
      shipped = 0;
      leadHours = 0;
      continue;
    }

    now = times[0];
    const station = who[0],
      unit = born[station];
    rootIsSpent = true;
    completions++;

    if (station !== LAST) {
      const next = station + 1,
        ahead = queued[next];
      if (state[next] === STARVED) {
        spent[next] += now - since[next];
        since[next] = now;
        state[next] = WORKING;
        born[next] = unit;
        starts[startCount++] = next;
      } else if (ahead < BUFFER) {
        waiting[next * BUFFER + ((front[next] + ahead) & 1)] = unit;
        queued[next] = ahead + 1;
      } else {
        spent[WORKING * STATIONS + station] += now - since[station];
        since[station] = now;
        state[station] = BLOCKED;
        continue;
      }
    } else if (uniform(chance) >= SEND_BACK) {
      wipHours += wip * (now - wipSince);
      wipSince = now;
      wip--;
      const lead = now - unit;
      shipped++;
      leadHours += lead;
      leadCounts[Math.min(BINS - 1, (lead * BINS_PER_HOUR) | 0)]++;
    } else if (state[BACK_TO] === STARVED) {
      spent[BACK_TO] += now - since[BACK_TO];
      since[BACK_TO] = now;
      state[BACK_TO] = WORKING;
      born[BACK_TO] = unit;
      starts[startCount++] = BACK_TO;
    } else {
      if (reworkQueued === rework.length) {
        const wider = new Float64Array(2 * rework.length);
        for (let k = 0; k < reworkQueued; k++) wider[k] = rework[(reworkFront + k) & (rework.length - 1)];
        rework = wider;
        reworkFront = 0;
      }
      rework[(reworkFront + reworkQueued++) & (rework.length - 1)] = unit;
    }

    // The station is empty: take the next unit, and let blocked neighbours upstream move up in turn.
    for (let place = station; ; place--) {
      let blockedBehind = false;
      if (place === 0) {
        wipHours += wip * (now - wipSince);
        wipSince = now;
        wip++;
        born[0] = now;
      } else if (place === BACK_TO && reworkQueued > 0) {
        born[place] = rework[reworkFront];
        reworkFront = (reworkFront + 1) & (rework.length - 1);
        reworkQueued--;
      } else if (queued[place] > 0) {
        const slot = place * BUFFER + front[place];
        born[place] = waiting[slot];
        front[place] ^= 1;
        // A full ring: the space just freed is also the one that the blocked unit takes.
        if (state[place - 1] === BLOCKED) {
          waiting[slot] = born[place - 1];
          blockedBehind = true;
        } else queued[place]--;
      } else {
        spent[state[place] * STATIONS + place] += now - since[place];
        since[place] = now;
        state[place] = STARVED;
        break;
      }
      if (state[place] !== WORKING) {
        spent[state[place] * STATIONS + place] += now - since[place];
        since[place] = now;
        state[place] = WORKING;
      }
      starts[startCount++] = place;
      if (!blockedBehind) break;
    }
  }

  const shares = (which) =>
    Array.from(spent.subarray(which * STATIONS, (which + 1) * STATIONS), (h) => h / hours);
  return {
    completions,
    throughput: shipped / hours,
    wip: wipHours / hours,
    leadTime: leadHours / shipped,
    leadTimeP95: quantile(leadCounts, shipped, 0.95),
    working: shares(WORKING),
    blocked: shares(BLOCKED),
    starved: shares(STARVED),
    seed,
  };
}
