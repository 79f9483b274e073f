import type { Metadata } from 'next';
import { UnreadOf } from '@/app/_parts/unread-of';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type OrdersScreen, ordersScreen } from '@/lib/views/orders';
import { EmptyPlace } from '../../_parts/empty-place';
import { FirstVisit } from '../../_parts/first-visit';
import { OrderTable } from './order-table';
import styles from './orders.module.css';
import { WrittenOrders } from './written-orders';

export const metadata: Metadata = { title: 'Orders' };

async function OrdersPage() {
  const screen = await ordersScreen(clock);
  if (!screen) return <FirstVisit />;
  const { shopId, open, closed, suppliers, ways } = screen;
  return (
    <>
      <UnreadOf of={{ list: 'orders' }} />
      <p>
        <a href="/buy">Buy</a>
      </p>
      <h1>Orders</h1>
      {suppliers.length === 0 ? (
        <EmptyPlace step={{ href: '/shelf/suppliers/new', text: 'Add a supplier' }}>
          What is ordered, from whom, and when it comes. An order needs a supplier and what it offers.
        </EmptyPlace>
      ) : (
        <WriteOne suppliers={suppliers} />
      )}
      <WrittenOrders shop={shopId} today={ways.today} />
      <section aria-labelledby="open">
        <h2 id="open">On order</h2>
        {open.length === 0 ? (
          <EmptyPlace>Nothing is on its way.</EmptyPlace>
        ) : (
          <>
            <OrderTable orders={open} ways={ways} label="On order" />
            <p className="apart">
              <a href="/buy/orders/list">All of it as a list, by supplier</a>
            </p>
          </>
        )}
      </section>
      {closed.length > 0 && (
        <section aria-labelledby="closed">
          <h2 id="closed">Ordered before</h2>
          <OrderTable orders={closed} ways={ways} label="Ordered before" />
        </section>
      )}
    </>
  );
}

/** Whose offers to order from. Works by the address alone. */
function WriteOne({ suppliers }: Pick<OrdersScreen, 'suppliers'>) {
  return (
    <div className={styles.head}>
      <form action="/buy/orders/new" method="get">
        <div>
          <label htmlFor="supplier">From which supplier</label>
          <select id="supplier" name="supplier">
            {suppliers.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </div>
        <button type="submit" data-main="">
          Write an order
        </button>
      </form>
    </div>
  );
}

export default doorPage('grow', OrdersPage);
