import type { PlannedOrder } from '@/lib/views/purchase-plan';
import { showDay } from '@/shared/time/show-day';
import { Figure } from '../../_parts/figure';
import type { Ways } from '../../_parts/shown-text';
import styles from './plan.module.css';

/** The orders of a plan, by day and supplier: packs, why, freight, and the way to write each of them. */
export function PlannedOrders({ orders, ways }: { orders: PlannedOrder[]; ways: Ways }) {
  return (
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
              <li key={line.offer}>
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
                  {line.why.map(({ words, figure }) => (
                    <li key={words}>
                      {figure ? (
                        <Figure of={figure} ways={ways} isSentence>
                          {words}
                        </Figure>
                      ) : (
                        words
                      )}
                    </li>
                  ))}
                </ul>
              </li>
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
  );
}
