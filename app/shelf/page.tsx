import type { Metadata } from 'next';
import { UnreadOf } from '@/app/_parts/unread-of';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { NO_PLACE, type ShelfScreen, shelfScreen } from '@/lib/views/shelf';
import { EmptyPlace } from '../_parts/empty-place';
import { FirstVisit } from '../_parts/first-visit';
import { FlagLines } from '../_parts/flag-lines';
import { PageLinks } from '../_parts/page-links';
import { one, type Search } from '../_parts/search';
import { BottleShelf } from './bottle-shelf';
import { BottleTable } from './bottle-table';
import styles from './shelf.module.css';
import { ShelfFilter } from './shelf-filter';
import { shelfHref } from './shelf-href';
import { ShelfLinks } from './shelf-links';
import { ShelfSums } from './shelf-sums';
import { ViewToggle } from './view-toggle';

export const metadata: Metadata = { title: 'Shelf' };

async function ShelfPage({ searchParams }: { searchParams: Promise<Search> }) {
  const asked = Object.entries(await searchParams).map(([name, value]) => [name, one(value)]);
  const screen = await shelfScreen(clock, Object.fromEntries(asked));
  if (!screen) return <FirstVisit />;
  return (
    <>
      <UnreadOf of={{ list: 'products' }} />
      <UnreadOf of={{ list: 'lots' }} />
      <div className={styles.top}>
        <h1>Shelf</h1>
        <ShelfLinks />
      </div>
      {screen.all === 0 ? (
        <EmptyPlace step={{ href: '/shelf/new', text: 'Enter the first product' }}>
          Every bottle as it stands: filled to what is left, with its last usable day, what it is worth and when to
          order more. There is no product yet. Whoever has them in a list can{' '}
          <a href="/setup/csv">bring in the whole list</a>.
        </EmptyPlace>
      ) : (
        <Shelf screen={screen} />
      )}
    </>
  );
}

function Shelf({ screen }: { screen: ShelfScreen }) {
  const { query, kinds, places, putAway, sums, ways, flags, pages } = screen;
  const isTable = query.as === 'table';
  return (
    <>
      <ShelfSums sums={sums} ways={ways} />
      <ShelfFilter
        query={query}
        kinds={kinds}
        places={places.map((place) => ({ value: place ?? NO_PLACE, text: place ?? 'not noted' }))}
        putAway={putAway}
      >
        <ViewToggle isTable={isTable} href={shelfHref({ ...query, as: isTable ? 'bottles' : 'table' })} />
      </ShelfFilter>
      <p className={styles.found} role="status">
        {foundWords(screen)}
      </p>
      <Found screen={screen} />
      <PageLinks of={pages} label="Pages of the shelf" href={(page) => shelfHref({ ...query, page })} />
      <FlagLines flags={flags} />
    </>
  );
}

function Found({ screen: { products, query, today, ways } }: { screen: ShelfScreen }) {
  if (products.length === 0) {
    return (
      <EmptyPlace step={{ href: '/shelf', text: 'Show the whole shelf' }}>
        No product is named like that, has that in it, or stands there.
      </EmptyPlace>
    );
  }
  return query.as === 'table' ? (
    <BottleTable products={products} today={today} ways={ways} />
  ) : (
    <BottleShelf products={products} today={today} ways={ways} />
  );
}

function foundWords({ found, all }: ShelfScreen): string {
  const shown = found.products === all ? counted(all, 'product') : `${found.products} of ${counted(all, 'product')}`;
  return `${shown} · ${counted(found.bottles, 'bottle')} with something in them`;
}

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

export default doorPage('see-shop', ShelfPage);
