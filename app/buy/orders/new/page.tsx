import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { orderFormScreen } from '@/lib/views/orders';
import { EmptyPlace } from '../../../_parts/empty-place';
import { one, pairsOf, type Search } from '../../../_parts/search';
import { OrderForm } from '../order-form';

export const metadata: Metadata = { title: 'Write an order' };

/** A plan may hand lines over in the address, as the form itself names them: "lines[0].offer", "lines[0].count". */
async function NewOrderPage({ searchParams }: { searchParams: Promise<Search> }) {
  const search = await searchParams;
  const screen = await orderFormScreen(clock, { supplier: one(search.supplier) ?? '' });
  return (
    <>
      <p>
        <a href="/buy/orders">Orders</a>
      </p>
      <h1>{screen ? `Order from ${screen.supplier.name}` : 'Write an order'}</h1>
      {!screen ? (
        <EmptyPlace step={{ href: '/buy/orders', text: 'Choose a supplier' }}>
          An order goes to one supplier. There is none of that name here.
        </EmptyPlace>
      ) : screen.offers.length === 0 ? (
        <EmptyPlace step={{ href: '/shelf', text: 'Look at the shelf' }}>
          They offer nothing yet. An offer is added at its product, under “Who sells it”.
        </EmptyPlace>
      ) : (
        <OrderForm screen={screen} asked={Object.fromEntries(pairsOf(search))} />
      )}
    </>
  );
}

export default doorPage('grow', NewOrderPage);
