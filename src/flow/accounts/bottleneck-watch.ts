import type { Memory } from '../floor/memory.js';
import type { Model } from '../model/model.js';
import { CARRIER, EQUIPMENT } from '../model/resources.js';
import type { Shop } from '../shop.js';
import type { Active, PeriodWatch } from './active-periods.js';
import { MomentaryBottleneck } from './momentary-bottleneck.js';

/**
 * Hands active periods to the momentary bottleneck as they begin and end. Resources are numbered as
 * everywhere for bottlenecks: stations, crews, lanes, carriers, equipment. Arrival banks have no equipment
 * and are passed over.
 */
export class BottleneckWatch implements PeriodWatch {
  private momentary: MomentaryBottleneck;
  private readonly resources: readonly Active[];
  private readonly isBank: ArrayLike<number>;

  constructor(
    { stations: { isBank } }: Model,
    private readonly memory: Memory,
    { stations, resources, lanes }: Pick<Shop, 'stations' | 'resources' | 'lanes'>,
  ) {
    const others = [
      ...resources.filter(({ isCrew }) => isCrew),
      ...lanes,
      ...resources.filter(({ kind }) => kind === CARRIER),
      ...resources.filter(({ kind }) => kind === EQUIPMENT),
    ];
    this.resources = [...stations, ...others];
    this.isBank = isBank;
    memory.watch = this;
    others.forEach((each, i) => {
      each.watchActive(this, stations.length + i);
    });
    this.momentary = this.afresh();
  }

  begin(resource: number): void {
    if (this.isBank[resource] !== 1) this.momentary.begin(resource, this.memory.now);
  }

  end(resource: number): void {
    this.momentary.end(resource, this.memory.now);
  }

  /** Observation begins now: periods that go on are cut here, as `clearActive` cuts them. */
  startAfresh(): void {
    this.momentary = this.afresh();
    this.resources.forEach((each, id) => {
      if (each.isActive) this.begin(id);
    });
  }

  /** The run is over. */
  finish(): void {
    this.momentary.finish(this.memory.now);
  }

  /** By resource, minutes of the clock. */
  get sole(): Float64Array {
    return this.momentary.sole;
  }
  get shifting(): Float64Array {
    return this.momentary.shifting;
  }

  private afresh(): MomentaryBottleneck {
    const { memory } = this;
    return new MomentaryBottleneck(this.resources.length, memory.now, (resource, begin) =>
      this.resources[resource].activeMinutesBetween(begin, memory.now),
    );
  }
}
