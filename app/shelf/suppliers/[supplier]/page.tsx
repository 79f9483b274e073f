import { UnreadOf, UnreadOrMissing } from '@/app/_parts/unread-of';
import { clock } from '@/lib/clock';
import { doorPage, doorTitle } from '@/lib/door/door-page';
import { supplierScreen } from '@/lib/views/suppliers';
import { fieldsOfSupplier } from '@/shared/forms/supplier';
import { EmptyPlace } from '../../../_parts/empty-place';
import { LeadForm } from '../../../buy/orders/lead-form';
import { OrderTable } from '../../../buy/orders/order-table';
import { OfferTable } from '../../[product]/offer-table';
import { PutAway } from '../../put-away';
import { SupplierForm } from '../supplier-form';
import styles from '../suppliers.module.css';

type SupplierParams = { params: Promise<{ supplier: string }> };

const screenOf = async ({ params }: SupplierParams) =>
  supplierScreen(clock, decodeURIComponent((await params).supplier));

export const generateMetadata = doorTitle(
  'grow',
  async (props: SupplierParams) => (await screenOf(props))?.supplier?.name,
);

async function SupplierPage(props: SupplierParams) {
  const screen = await screenOf(props);
  const of = { list: 'suppliers' as const, id: decodeURIComponent((await props.params).supplier) };
  if (!screen?.supplier) return <UnreadOrMissing of={of} />;
  const { supplier, shopId, expecting, taken, offers, orders, lead, ways } = screen;
  return (
    <>
      <UnreadOf of={of} />
      <p>
        <a href="/shelf/suppliers">Suppliers</a>
      </p>
      <h1>{supplier.name}</h1>
      {supplier.archived && (
        <p className="grave">Put away: nothing is bought from here, and nothing here counts in a price.</p>
      )}
      <div className={styles.columns}>
        <section aria-labelledby="facts">
          <h2 id="facts">How they sell</h2>
          <SupplierForm
            {...{ shop: shopId, id: supplier.id, expecting, taken, currency: ways.currency }}
            fields={fieldsOfSupplier(supplier)}
          />
          <PutAway
            {...{
              shop: shopId,
              what: 'supplier',
              id: supplier.id,
              expecting,
              archived: supplier.archived,
              removable: true,
            }}
          />
        </section>
        <section aria-labelledby="offers">
          <h2 id="offers">What they offer</h2>
          {offers.length === 0 ? (
            <EmptyPlace step={{ href: '/shelf', text: 'Look at the shelf' }}>
              Nothing yet. An offer is added at its product, under “Who sells it”.
            </EmptyPlace>
          ) : (
            <OfferTable offers={offers} ways={ways} by="product" />
          )}
          <h2 id="orders">What was ordered from them</h2>
          {lead && <LeadForm shop={shopId} supplier={supplier.id} lead={lead} ways={ways} />}
          {orders.length > 0 && <OrderTable orders={orders} ways={ways} label="Orders" />}
          {!supplier.archived && offers.length > 0 && (
            <p className="apart">
              <a className="button" href={`/buy/orders/new?supplier=${encodeURIComponent(supplier.id)}`}>
                Write an order
              </a>
            </p>
          )}
        </section>
      </div>
    </>
  );
}

export default doorPage('grow', SupplierPage);
