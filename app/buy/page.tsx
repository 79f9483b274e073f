import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type BuyScreen, buyScreen } from '@/lib/views/buy';
import { EmptyPlace } from '../_parts/empty-place';
import { FirstVisit } from '../_parts/first-visit';
import { PageLinks } from '../_parts/page-links';
import type { Search } from '../_parts/search';
import { ToEnterList } from '../_parts/to-enter';
import { RampFacts } from '../shelf/[product]/ramp-facts';
import { RampFold } from '../shelf/[product]/ramp-fold';
import { RunOutLater } from '../shelf/[product]/run-out-later';
import { WeeksTable } from '../shelf/[product]/weeks-table';
import styles from './buy.module.css';
import { BuyLinks } from './buy-links';
import { OrderTable } from './orders/order-table';
import { buyHref, ReorderTable } from './reorder-table';
import { WhatIf } from './what-if-form';

export const metadata: Metadata = { title: 'Buy' };

async function BuyPage({ searchParams }: { searchParams: Promise<Search> }) {
  const screen = await buyScreen(clock, await searchParams);
  if (!screen) return <FirstVisit />;
  const { products, pages, shown, sort, late, open, ways } = screen;
  return (
    <>
      <h1>Buy</h1>
      <BuyLinks here="/buy" />
      <section aria-labelledby="reorder">
        <h2 id="reorder">When to order</h2>
        {products.length === 0 ? (
          <EmptyPlace step={{ href: '/shelf/new', text: 'Enter a product' }}>
            Every product stands here with the weeks until it has to be ordered.
          </EmptyPlace>
        ) : (
          <>
            {late > 0 && (
              <p className="grave">
                <b>{late === 1 ? 'One is late' : `${late} are late`}:</b> no order placed today comes before it runs
                out, with the safety days between.
              </p>
            )}
            <CannotBePlanned screen={screen} />
            <ReorderTable screen={screen} />
            <PageLinks
              of={pages}
              label="Pages of the products"
              href={(page) => `${buyHref(shown?.product.id, sort, page)}#reorder`}
            />
          </>
        )}
      </section>
      <ShownProduct screen={screen} />
      <section aria-labelledby="open">
        <h2 id="open">On order</h2>
        {open.length === 0 ? (
          <EmptyPlace step={{ href: '/buy/orders', text: 'Write an order' }}>Nothing is on its way.</EmptyPlace>
        ) : (
          <OrderTable orders={open} ways={ways} label="On order" />
        )}
      </section>
    </>
  );
}

/** The products of which nobody knows how much is needed, with what to enter. */
function CannotBePlanned({ screen: { unplanned: unknown } }: { screen: BuyScreen }) {
  if (unknown.length === 0) return null;
  return (
    <div className="grave">
      <p>
        <b>{unknown.length === 1 ? 'One cannot be planned' : `${unknown.length} cannot be planned`}:</b> how much is
        needed is not known.
      </p>
      {unknown.map(({ product, toEnter }) => (
        <div key={product.id}>
          <b>{product.name}</b>
          <ToEnterList of={toEnter} />
        </div>
      ))}
    </div>
  );
}

/** One product large: how it runs out, and what would change that. */
function ShownProduct({ screen: { shown, ways, today, whatIf, shopId } }: { screen: BuyScreen }) {
  if (!shown) return null;
  const { product, ramp, steps, weeks } = shown;
  const id = encodeURIComponent(product.id);
  return (
    <div className={styles.columns}>
      <section aria-labelledby="ramp">
        <h2 id="ramp">How {product.name} runs out</h2>
        <RunOutLater ramp={ramp} units={ways.units} today={today} />
        <RampFacts steps={steps} ways={ways} />
        <RampFold steps={steps} ways={ways} />
        <details className={styles.table}>
          <summary>The same week by week</summary>
          <WeeksTable weeks={weeks} ways={ways} />
        </details>
        <p className={styles.links}>
          <a href={`/shelf/${id}`}>{product.name} on the shelf</a>
          <a href={`/buy/equivalents?product=${id}`}>What could stand in for it</a>
        </p>
      </section>
      <WhatIf key={product.id} shop={shopId} product={product} ways={ways} {...whatIf} />
    </div>
  );
}

export default doorPage('grow', BuyPage);
