import type { ServerResponse } from 'node:http';

/** How many requests of one visitor are answered at once, how many more wait, and how long one waits. */
type Crowd = { atOnce: number; waiting: number; patienceMs: number };

/** A page of ours loads with fewer at once. */
const CROWD: Crowd = { atOnce: 24, waiting: 200, patienceMs: 10_000 };

/** True when it is the request's turn; false when there is no room for it. */
type Turn = (isIn: boolean) => void;
type Visits = { running: number; waiting: Set<Turn> };

/**
 * Lets so many requests of one visitor run at once, so that one device never takes the whole server.
 *
 * Gives    a function that takes the visitor's address and the response that ends the request; it answers true at the
 *          request's turn, false when too many wait already or the wait was too long
 */
export function concurrencyGate({ atOnce, waiting, patienceMs } = CROWD) {
  const visitors = new Map<string, Visits>();

  function leave(visitor: string, visits: Visits): void {
    visits.running -= 1;
    const [next] = visits.waiting;
    next?.(true);
    if (visits.running === 0) visitors.delete(visitor);
  }

  return (visitor: string, response: ServerResponse): Promise<boolean> => {
    const visits = visitors.get(visitor) ?? { running: 0, waiting: new Set() };
    visitors.set(visitor, visits);
    return new Promise((resolve) => {
      const turn: Turn = (isIn) => {
        clearTimeout(timer);
        visits.waiting.delete(turn);
        if (isIn) visits.running += 1;
        if (isIn) response.once('close', () => leave(visitor, visits));
        resolve(isIn);
      };
      const timer = setTimeout(() => turn(false), patienceMs).unref();
      if (visits.running < atOnce) return turn(true);
      if (visits.waiting.size >= waiting) return turn(false);
      visits.waiting.add(turn);
      response.once('close', () => visits.waiting.has(turn) && turn(false));
    });
  };
}
