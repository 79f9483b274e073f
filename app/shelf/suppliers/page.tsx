import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type SupplierListed, suppliersScreen } from '@/lib/views/suppliers';
import { showMoney } from '@/shared/measure/show';
import type { Day } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';
import { EmptyPlace } from '../../_parts/empty-place';
import { FirstVisit } from '../../_parts/first-visit';
import styles from './suppliers.module.css';
import { workingDaysText } from './working-days-text';

export const metadata: Metadata = { title: 'Suppliers' };

async function SuppliersPage() {
  const screen = await suppliersScreen(clock);
  if (!screen) return <FirstVisit />;
  const { suppliers, putAway, ways } = screen;
  return (
    <>
      <p>
        <a href="/shelf">Shelf</a>
      </p>
      <div className={styles.head}>
        <h1>Suppliers</h1>
        <a className="button" href="/shelf/suppliers/new">
          Add a supplier
        </a>
      </div>
      {suppliers.length === 0 ? (
        <EmptyPlace step={{ href: '/shelf/suppliers/new', text: 'Add a supplier' }}>
          Who sells to the shop, what freight they take and on which days they work. Without one, nothing has a price or
          an order-by day.
        </EmptyPlace>
      ) : (
        <section aria-labelledby="buying">
          <h2 id="buying" className="spoken">
            Those the shop buys from
          </h2>
          <SupplierList suppliers={suppliers} ways={ways} />
        </section>
      )}
      {putAway.length > 0 && (
        <section aria-labelledby="away">
          <h2 id="away">Put away</h2>
          <p className="soft">Nothing is bought from them any more, and they count in no price.</p>
          <SupplierList suppliers={putAway} ways={ways} />
        </section>
      )}
    </>
  );
}

type Ways = { currency: string; today: Day };

function SupplierList({ suppliers, ways }: { suppliers: SupplierListed[]; ways: Ways }) {
  return (
    <ul className={styles.list}>
      {suppliers.map((listed) => (
        <li key={listed.supplier.id}>
          <h3>
            <a href={`/shelf/suppliers/${encodeURIComponent(listed.supplier.id)}`}>{listed.supplier.name}</a>
            <span className="soft">{countText(listed.offers)}</span>
          </h3>
          <dl>
            {factsOf(listed, ways).map(([name, value]) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd className={value === null ? 'grave' : undefined}>
                  {value ?? 'not known, so nothing from here has a cost to replace'}
                </dd>
              </div>
            ))}
          </dl>
        </li>
      ))}
    </ul>
  );
}

const countText = (offers: number): string =>
  offers === 0 ? 'no offers yet' : `${offers} ${offers === 1 ? 'offer' : 'offers'}`;

function factsOf({ supplier }: SupplierListed, { currency, today }: Ways): [string, string | null][] {
  const { freightPerOrder, freeFreightOver, minimumOrder, workingDays, closedOn } = supplier;
  const money = (micros: number) => showMoney(micros, currency);
  return [
    [
      'Freight',
      freightPerOrder === null ? null : freightPerOrder === 0 ? 'none' : `${money(freightPerOrder)} an order`,
    ],
    ['No freight from', freeFreightOver === null ? 'always paid' : money(freeFreightOver)],
    ['Smallest order', minimumOrder === null ? 'not known' : minimumOrder === 0 ? 'any' : money(minimumOrder)],
    ['Works', workingDaysText(workingDays.weekdays)],
    ['Closed on', comingDays(closedOn, today)],
  ];
}

/** The next dates on which they do not work. */
function comingDays(days: Day[], today: Day): string {
  const coming = days.filter((day) => day >= today).sort();
  if (coming.length === 0) return 'no dates entered';
  const shown = coming.slice(0, MOST_DATES).map((day) => showDay(day, today));
  return coming.length > MOST_DATES ? `${shown.join(', ')} and ${coming.length - MOST_DATES} more` : shown.join(', ');
}

const MOST_DATES = 4;

export default doorPage('see-shop', SuppliersPage);
