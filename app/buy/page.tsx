import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { ordersScreen } from '@/lib/views/orders';
import { EmptyPlace } from '../_parts/empty-place';
import { FirstVisit } from '../_parts/first-visit';
import { OrderTable } from './orders/order-table';

export const metadata: Metadata = { title: 'Buy' };

export default async function BuyPage() {
  const screen = await ordersScreen(clock);
  if (!screen) return <FirstVisit />;
  return (
    <>
      <h1>Buy</h1>
      <p>
        <a href="/buy/orders">Orders</a> · <a href="/buy/budget">Budget</a>
      </p>
      <section aria-labelledby="open">
        <h2 id="open">On order</h2>
        {screen.open.length === 0 ? (
          <EmptyPlace step={{ href: '/buy/orders', text: 'Write an order' }}>Nothing is on its way.</EmptyPlace>
        ) : (
          <OrderTable orders={screen.open} ways={screen.ways} label="On order" />
        )}
      </section>
    </>
  );
}
