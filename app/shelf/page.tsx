import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { type ShelfScreen, shelfScreen } from '@/lib/views/shelf';
import { EmptyPlace } from '../_parts/empty-place';
import { FirstVisit } from '../_parts/first-visit';
import { FlagLines } from '../_parts/flag-lines';
import { one, type Search } from '../_parts/search';
import { BottleShelf } from './bottle-shelf';
import { BottleTable } from './bottle-table';
import { ShelfFilter } from './shelf-filter';

export const metadata: Metadata = { title: 'Shelf' };

export default async function ShelfPage({ searchParams }: { searchParams: Promise<Search> }) {
  const asked = Object.entries(await searchParams).map(([name, value]) => [name, one(value)]);
  const screen = await shelfScreen(clock, Object.fromEntries(asked));
  if (!screen) return <FirstVisit />;
  return (
    <>
      <h1>Shelf</h1>
      <p className="soft">{summaryOf(screen)}</p>
      {screen.all === 0 ? (
        <EmptyPlace step={{ href: '/setup', text: 'Bring in a shop file' }}>
          Every bottle as it stands: filled to what is left, with its last usable day. There is no product yet.
        </EmptyPlace>
      ) : (
        <>
          <ShelfFilter query={screen.query} kinds={screen.kinds} />
          <Found screen={screen} />
          <FlagLines flags={screen.flags} />
        </>
      )}
    </>
  );
}

function Found({ screen: { products, query, today, ways } }: { screen: ShelfScreen }) {
  if (products.length === 0) {
    return (
      <EmptyPlace step={{ href: '/shelf', text: 'Show the whole shelf' }}>
        No product is named like that, or has that in it.
      </EmptyPlace>
    );
  }
  return query.as === 'table' ? (
    <BottleTable products={products} today={today} ways={ways} />
  ) : (
    <BottleShelf products={products} today={today} ways={ways} />
  );
}

function summaryOf({ products, all }: ShelfScreen): string {
  const bottles = products.reduce((sum, product) => sum + product.bottles.length, 0);
  const shown = products.length === all ? `${all} products` : `${products.length} of ${all} products`;
  return `${shown} · ${bottles} ${bottles === 1 ? 'container' : 'containers'} with something in them`;
}
