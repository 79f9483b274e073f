import type { PlannedLine, PlannedOrder, Why } from '@/lib/views/purchase-plan';
import { showDay } from '@/shared/time/show-day';
import { Figure } from '../../_parts/figure';
import type { Ways } from '../../_parts/shown-text';
import styles from './plan.module.css';

/** The orders of a plan, by day and supplier: packs, why, freight, and the way to write each of them. */
export function PlannedOrders({ orders, ways }: { orders: PlannedOrder[]; ways: Ways }) {
  return (
    <>
      <ListOfFirst orders={orders} ways={ways} />
      <ol className={styles.orders}>
        {orders.map((order) => (
          <li key={order.key}>
            <h3 className={styles.who}>
              <span>
                {order.isToday ? 'Today' : showDay(order.on, ways.today)}, {order.supplier.name}
              </span>
              <Figure of={order.total} ways={ways} />
            </h3>
            <ul className={styles.lines}>
              {order.lines.map((line) => (
                <Line key={line.offer} line={line} ways={ways} />
              ))}
            </ul>
            <p className={styles.foot}>
              <span>
                Goods <Figure of={order.goods} ways={ways} />, freight <Figure of={order.freight} ways={ways} />
              </span>
              <a className="button" href={order.href}>
                Write this order
              </a>
            </p>
          </li>
        ))}
      </ol>
    </>
  );
}

/** What the plan orders first, today or on the next day it orders anything, as a list to send: each supplier with its sums. */
function ListOfFirst({ orders, ways }: { orders: PlannedOrder[]; ways: Ways }) {
  const [first] = orders;
  if (!first) return null;
  const lines = orders.filter(({ on }) => on === first.on).flatMap((order) => order.lines);
  const fields = lines.flatMap(({ offer, count }, row) => [
    [`lines[${row}].offer`, offer],
    [`lines[${row}].count`, String(count)],
  ]);
  return (
    <p>
      <a href={`/buy/orders/list?${new URLSearchParams(fields)}`}>
        The purchase list of {first.isToday ? 'today' : showDay(first.on, ways.today)}, by supplier
      </a>
    </p>
  );
}

function Line({ line, ways }: { line: PlannedLine; ways: Ways }) {
  return (
    <li>
      <p className={styles.who}>
        <span>
          <b>
            {line.count} × {line.pack}
          </b>{' '}
          <a href={line.href}>{line.product}</a>
        </span>
        <Figure of={line.cost} ways={ways} />
      </p>
      <ul className="soft small" aria-label={`Why ${line.pack} of ${line.product}`}>
        {line.why.map((why) => (
          <li key={why.words}>
            <Reason why={why} ways={ways} />
          </li>
        ))}
      </ul>
    </li>
  );
}

/** A sentence that opens to the figure in it, where it has one. */
function Reason({ why: { words, figure }, ways }: { why: Why; ways: Ways }) {
  if (!figure) return words;
  return (
    <Figure of={figure} ways={ways} isSentence>
      {words}
    </Figure>
  );
}
