import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { purchaseLists } from '@/lib/views/purchase-list';
import { EmptyPlace } from '../../../_parts/empty-place';
import { FirstVisit } from '../../../_parts/first-visit';
import { PrintButton } from '../../../_parts/print-button';
import { pairsOf, type Search } from '../../../_parts/search';
import styles from '../orders.module.css';
import { SupplierList } from './supplier-list';

export const metadata: Metadata = { title: 'Purchase list' };

/** What the form of an order sends of itself and not of what is ordered. */
const OWN = /^(commandId|shop|id|standing|supplier|\$ACTION.*)$/;

async function PurchaseListPage({ searchParams }: { searchParams: Promise<Search> }) {
  const asked = pairsOf(await searchParams).filter(([name, value]) => !OWN.test(name) && value !== '');
  const screen = await purchaseLists(clock, Object.fromEntries(asked));
  if (!screen) return <FirstVisit />;
  const { lists, leftOut, ways, shopId, shopName } = screen;
  const query = new URLSearchParams(asked).toString();
  return (
    <>
      <p className={styles.back}>
        <a href="/buy/orders">Orders</a>
      </p>
      <h1>Purchase list</h1>
      <p className="soft">{shopName}</p>
      <LeftOut of={leftOut} />
      {lists.length === 0 ? (
        <EmptyPlace step={{ href: '/buy/orders', text: 'Write an order' }}>Nothing is on this list.</EmptyPlace>
      ) : (
        <div className={styles.tools}>
          <PrintButton />
          <a className="button" href={`/buy/orders/list/csv${query && `?${query}`}`} download="purchase-list.csv">
            Save as CSV
          </a>
        </div>
      )}
      {lists.map((list) => (
        <SupplierList key={list.order ?? list.supplier.id} list={list} shop={shopId} ways={ways} />
      ))}
    </>
  );
}

/** What was asked for and is on no list, so that nobody sends one believing it whole. */
function LeftOut({ of }: { of: string[] }) {
  if (of.length === 0) return null;
  return (
    <div role="alert" className="apart">
      <p className="grave">▲ Left out, because it cannot be read. Go back to the order to put it right.</p>
      <ul>
        {of.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </div>
  );
}

export default doorPage('grow', PurchaseListPage);
