import type { Horizon } from '../horizon';
import { cheapestColumn, type Prices } from './cheapest-column';
import { type Column, columnOf, totalOfChoice } from './column';
import { localOf, type PartGraph } from './part-graph';
import { type Slots, twinOf } from './slots';

/**
 * A choice of columns after each part in turn has joined the orders of the others, for as long as that makes it cheaper.
 *
 * Takes    one column and one graph of each part, and whether the time is over
 */
export function improved(
  choice: readonly Column[],
  graphs: readonly PartGraph[],
  slots: Slots,
  horizon: Horizon,
  isOver: () => boolean,
): Column[] {
  let [columns, total] = [[...choice], totalOfChoice(choice)];
  for (let turn = 0, idle = 0; idle < choice.length && !isOver(); turn++) {
    const part = turn % choice.length;
    const graph = graphs[part];
    const found = graph && cheapestColumn(graph, horizon, localOf(graph, besideOthers(slots, columns, part)));
    const column = found ? columnOf(graph.part, slots, horizon, found.bought) : null;
    const next = columns.map((one, index) => (index === part && column ? column : one));
    const cost = totalOfChoice(next);
    idle = cost < total ? 0 : idle + 1;
    if (cost < total) [columns, total] = [next, cost];
  }
  return columns;
}

/** What being in an order costs a part when the others' orders are sent anyway. */
function besideOthers(slots: Slots, columns: readonly Column[], part: number): Prices {
  const isSent = new Uint8Array(slots.all.length);
  for (const [other, { goods }] of columns.entries()) {
    if (other !== part) for (const slot of goods.keys()) isSent[twinOf(slots, slot)[0]] = 1;
  }
  const fixed = Float64Array.from(slots.all, ({ supplier }, slot) =>
    isSent[twinOf(slots, slot)[0]] === 1 ? 0 : (supplier.freightPerOrder ?? 0),
  );
  return { fixed, reward: new Float64Array(fixed.length) };
}
