/** It ends when so many simulated values were as great as the one seen: p is then known to about a fifth. */
const ENOUGH = 20;
/** It also ends when none of so many was: p is then below 0.05, but for one case in 2,000 where it is 0.05. */
const NONE_OF = 150;

/**
 * A p-value by simulation that ends early where it is clear. Where `ENOUGH` of the first l were as great, p is
 * ENOUGH / l (J. Besag & P. Clifford, Biometrika 78(2), 1991, 301-304; from memory); else (count + 1) / (l +
 * 1) (A. C. Davison & D. V. Hinkley, Bootstrap Methods and their Application, 1997, chapter 4; from memory).
 */
export class SequentialP {
  private count = 0;
  private all = 0;

  /** @param most simulated values at most; below 0.05 can be told from 400 on */
  constructor(private readonly most: number) {}

  add(isAsGreat: boolean): void {
    if (this.isDone) return;
    this.all++;
    if (isAsGreat) this.count++;
  }

  get isDone(): boolean {
    const { count, all, most } = this;
    return all >= most || count >= ENOUGH || (count === 0 && all >= NONE_OF);
  }

  get p(): number {
    const { count, all } = this;
    return count >= ENOUGH ? count / all : (count + 1) / (all + 1);
  }

  get simulated(): number {
    return this.all;
  }
}
