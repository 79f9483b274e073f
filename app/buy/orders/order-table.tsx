import type { OrderListed } from '@/lib/views/orders';
import { showDayShort } from '@/shared/time/show-day';
import { Figure } from '../../_parts/figure';
import type { Ways } from '../../_parts/shown-text';
import { StateWords } from './order-state';
import styles from './orders.module.css';

type OrderTableProps = { orders: OrderListed[]; ways: Ways; label: string };

/** Orders as lines: from whom and when, what, what it comes to, and where it stands. */
export function OrderTable({ orders, ways, label }: OrderTableProps) {
  return (
    <ul className={styles.orders} aria-label={label}>
      {orders.map(({ id, href, supplier, placedOn, expectedOn, total, what, state }) => (
        <li key={id}>
          <p className={styles.who}>
            <a href={href}>
              {supplier}, {showDayShort(placedOn, ways.today)}
            </a>
            <Figure of={total} ways={ways} />
          </p>
          <p className="soft">{what}</p>
          <p>
            <StateWords state={state} />
            {state.kind !== 'closed' && (
              <>
                {' '}
                · expected <Figure of={expectedOn} ways={ways} />
              </>
            )}
          </p>
        </li>
      ))}
    </ul>
  );
}
