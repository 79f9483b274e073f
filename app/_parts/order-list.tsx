import type { OrderLine } from '@/lib/views/order-lines';
import { Figure } from './figure';
import { NeedUnknown } from './need-unknown';
import { OnOrder } from './on-order';
import styles from './order-list.module.css';
import type { Ways } from './shown-text';

/** What to order: whole weeks left as the large figure, and in words by when and why. */
export function OrderList({ orders, ways }: { orders: OrderLine[]; ways: Ways }) {
  return (
    <ul>
      {orders.map((line) => (
        <li key={line.product.id} className={styles.line}>
          <Weeks line={line} ways={ways} />
          <div>
            <a className={styles.product} href={`/shelf/${encodeURIComponent(line.product.id)}`}>
              {line.product.name}
            </a>
            <small>
              <OrderWords line={line} ways={ways} />
              {line.onOrder && <OnOrder of={line.onOrder} ways={ways} />}
            </small>
          </div>
        </li>
      ))}
    </ul>
  );
}

type LineProps = { line: OrderLine; ways: Ways };

/** The large figure: weeks left, "now" in the week itself, "late" after it. */
function Weeks({ line: { order, runsOutOn }, ways }: LineProps) {
  if (!order) {
    return (
      <span className={styles.weeks} data-pressing="">
        <Figure of={runsOutOn} ways={ways}>
          ?
        </Figure>
      </span>
    );
  }
  const { weeks, weeksUntilReorder } = order;
  return (
    <span className={styles.weeks} data-pressing={weeks <= 0 ? '' : undefined}>
      <Figure of={weeksUntilReorder} ways={ways}>
        {weeks < 0 ? 'late' : weeks === 0 ? 'now' : weeks}
        {weeks > 0 && <span className={styles.unit}>{weeks === 1 ? 'week' : 'weeks'}</span>}
      </Figure>
    </span>
  );
}

function OrderWords({ line: { order, runsOutOn, runsOut, toEnter }, ways }: LineProps) {
  if (!runsOut) return <NeedUnknown toEnter={toEnter} isShort />;
  if (!order) {
    return (
      <>
        runs out <Figure of={runsOutOn} ways={ways} />; no offer with a lead time
      </>
    );
  }
  return (
    <>
      {order.weeks < 0 ? 'due ' : 'order by '}
      <Figure of={order.orderBy} ways={ways} /> · runs out <Figure of={runsOutOn} ways={ways} />
    </>
  );
}
