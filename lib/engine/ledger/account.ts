import { type Micros, micros, minus, plus, type Stock } from '@/shared/quantity/amounts';
import { costOut } from './draw-cost';
import { isOut, type Movement, type Side } from './movement';

/** What one movement carried of a container's price, and whether it took that out of the container or back into it. */
export type Carried = { movement: Movement; cost: Micros; out: boolean };

/** Where the price of a container went. */
export type Account = { carried: Carried[]; sides: Record<Side, { out: Micros; back: Micros }>; left: Micros };

/**
 * Where what was paid for a container has gone, movement by movement.
 *
 *   paid = Σ out − Σ back + left, to the micro
 *
 * Each movement carries the part of the price that lies between the amounts that had left the container before and
 * after it, in the order in which movements were recorded, so that one entered late never changes the cost of another.
 *
 * Takes    what was paid for the container, its size when full, and its movements as they were recorded
 * Units    micros; µL of a liquid or mg of a powder
 * Throws   RangeError when the movements ever take more than there is, or fill it above its size
 */
export function account(paid: Micros, size: Stock, movements: readonly Movement[]): Account {
  const sides: Account['sides'] = { supplier: none(), container: none(), spray: none(), waste: none(), count: none() };
  const carried: Carried[] = [];
  let gone = size;
  for (const movement of movements) {
    const out = isOut(movement);
    const next = out ? plus(gone, movement.amount) : minus(gone, movement.amount);
    if (next > size) throw new RangeError(`account: movement ${movement.id} takes more than there is`);
    const cost = out ? costOut(paid, size, gone, next) : costOut(paid, size, next, gone);
    carried.push({ movement, cost, out });
    const side = sides[out ? movement.to : movement.from];
    // What the supplier brought first is the price itself; only what goes back to him leaves the account again.
    if (movement.kind !== 'received') side[out ? 'out' : 'back'] = plus(side[out ? 'out' : 'back'], cost);
    gone = next;
  }
  return { carried, sides, left: costOut(paid, size, gone, size) };
}

const none = () => ({ out: micros(0), back: micros(0) });
