/**
 * Coverages that were reached and are still to be looked at, smallest first. They are kept by the needed day in which
 * they end, and each day's are sorted when its turn comes: what is reached from one lies always further on.
 */
export class Frontier<T extends { covered: number }> {
  private readonly known = new Map<number, T>();
  private readonly waiting: T[][];
  private current = -1;

  /** Takes  how many needed days there are */
  constructor(places: number) {
    this.waiting = Array.from({ length: places }, () => []);
  }

  /** What was reached for a coverage; undefined when it was not. */
  at(covered: number): T | undefined {
    return this.known.get(covered);
  }

  /** Add a coverage that was not reached before, with the place of the needed day in which it ends. */
  add(stop: T, place: number): void {
    this.known.set(stop.covered, stop);
    const stops = this.waiting[place] ?? [];
    stops.push(stop);
    // Among those of the day that is being looked at, it goes to its place; the others are sorted when their day comes.
    for (let at = stops.length - 1; place === this.current && at > 0; at--) {
      const before = stops[at - 1];
      if (!before || before.covered < stop.covered) break;
      stops[at - 1] = stop;
      stops[at] = before;
    }
  }

  /** Look at each coverage once, smallest first. What is added on the way is looked at in its turn. */
  walk(look: (stop: T, place: number) => void): void {
    for (const [place, stops] of this.waiting.entries()) {
      this.current = place;
      stops.sort((a, b) => a.covered - b.covered);
      for (let next = 0; next < stops.length; next++) {
        const stop = stops[next];
        if (stop) look(stop, place);
      }
    }
  }
}
