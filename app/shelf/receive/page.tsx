import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type ReceiveScreen, receiveScreen } from '@/lib/views/receive';
import { showDay } from '@/shared/time/show-day';
import { EmptyPlace } from '../../_parts/empty-place';
import { FirstVisit } from '../../_parts/first-visit';
import type { Search } from '../../_parts/search';
import { DeliveryForm } from './delivery-form';
import { OneLotForm } from './one-lot-form';
import styles from './receive.module.css';

export const metadata: Metadata = { title: 'Receive' };

async function ReceivePage({ searchParams }: { searchParams: Promise<Search> }) {
  const screen = await receiveScreen(clock, await searchParams);
  if (!screen) return <FirstVisit />;
  const { delivery, products, product, suppliers } = screen;
  return (
    <>
      <p>
        <a href="/shelf">Shelf</a>
        {product && (
          <>
            {' '}
            › <a href={`/shelf/${encodeURIComponent(product.id)}`}>{product.name}</a>
          </>
        )}
      </p>
      <h1>Receive</h1>
      <Received screen={screen} />
      {products.length === 0 ? (
        <EmptyPlace step={{ href: '/shelf/new', text: 'Enter a product' }}>
          What came in stands here once there is a product for it.
        </EmptyPlace>
      ) : (
        <div className={styles.columns}>
          <section aria-labelledby="one">
            <h2 id="one">Bottles of one product</h2>
            <OneLotForm screen={screen} />
          </section>
          <section aria-labelledby="delivery">
            <h2 id="delivery">
              {delivery?.order
                ? `What came of the order of ${showDay(delivery.order.placedOn, screen.today)}`
                : 'A delivery'}
            </h2>
            {suppliers.length === 0 ? (
              <EmptyPlace step={{ href: '/shelf/suppliers/new', text: 'Enter a supplier' }}>
                With a supplier and its offers, a whole delivery goes on the shelf in one step.
              </EmptyPlace>
            ) : (
              <ChooseSupplier screen={screen} />
            )}
            {delivery &&
              (delivery.offers.length > 0 ? (
                <DeliveryForm screen={screen} delivery={delivery} />
              ) : (
                <p>{delivery.name} offers nothing yet.</p>
              ))}
          </section>
        </div>
      )}
    </>
  );
}

/** Whose delivery it is: the offers follow from that. Works by the address alone. */
function ChooseSupplier({ screen: { suppliers, delivery } }: { screen: ReceiveScreen }) {
  return (
    <form action="/shelf/receive#delivery" method="get" className={styles.choose}>
      <div>
        <label htmlFor="supplier">From which supplier</label>
        <select id="supplier" name="supplier" defaultValue={delivery?.id}>
          {suppliers.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </div>
      <button type="submit">Show what it sells</button>
    </form>
  );
}

/** What has just come in: where it stands, and its labels. */
function Received({ screen: { received } }: { screen: ReceiveScreen }) {
  if (received.length === 0) return null;
  return (
    <section aria-labelledby="received" className={styles.received}>
      <h2 id="received">On the shelf now</h2>
      <ul>
        {received.map(({ id, product, pack, bottles }) => (
          <li key={id}>
            {product}, {pack}:{' '}
            {bottles.map((address, number) => (
              <a key={address} href={address} className={styles.bottle}>
                bottle {number + 1}
              </a>
            ))}
          </li>
        ))}
      </ul>
      <p className="apart">
        <a className="button" href={`/shelf/labels?lots=${received.map(({ id }) => encodeURIComponent(id)).join(',')}`}>
          Print their labels
        </a>
      </p>
    </section>
  );
}

export default doorPage('grow', ReceivePage);
