import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { orderFormScreen } from '@/lib/views/orders';
import { OrderForm } from '../../order-form';

export const metadata: Metadata = { title: 'Change an order' };

async function EditOrderPage({ params }: { params: Promise<{ order: string }> }) {
  const id = decodeURIComponent((await params).order);
  const screen = await orderFormScreen(clock, { order: id });
  if (!screen) notFound();
  return (
    <>
      <p>
        <a href={`/buy/orders/${encodeURIComponent(id)}`}>The order</a>
      </p>
      <h1>Change the order from {screen.supplier.name}</h1>
      <OrderForm screen={screen} asked={{}} />
    </>
  );
}

export default doorPage('grow', EditOrderPage);
