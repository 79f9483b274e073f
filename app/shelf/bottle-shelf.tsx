import type { ShelfBottle } from '@/lib/views/shelf-bottles';
import type { ShelfProduct } from '@/lib/views/shelf-product';
import type { Day } from '@/shared/time/day';
import { showDayShort } from '@/shared/time/show-day';
import { Bottle } from '../_parts/bottle';
import { Figure } from '../_parts/figure';
import type { Ways } from '../_parts/shown-text';
import styles from './bottle-shelf.module.css';
import { daysLeftText } from './days-left-text';
import { weeksWords } from './weeks-words';

type BottleShelfProps = { products: ShelfProduct[]; today: Day; ways: Ways };

/** The shelf as it stands: every container drawn to scale on its board, and on the rail under it what it is. */
export function BottleShelf({ products, today, ways }: BottleShelfProps) {
  return (
    <ul className={styles.shelf}>
      {products.map((product) => (
        <li key={product.id} className={styles.product}>
          <div className={styles.row}>
            {product.bottles.map((bottle) => (
              <Bottle key={bottle.key} bottle={bottle.seen} />
            ))}
            {product.bottles.length === 0 && <p className={styles.gap}>none left</p>}
          </div>
          <div className={styles.rail}>
            <h2 className={styles.name}>
              <a href={`/shelf/${encodeURIComponent(product.id)}`}>{product.name}</a>
            </h2>
            <p className={styles.sum}>
              {product.kind} · <Figure of={product.onHand} ways={ways} />
              {product.someDead && (
                <>
                  , usable <Figure of={product.usable} ways={ways} />
                </>
              )}
            </p>
            <ReorderLine product={product} ways={ways} />
            <ul className={styles.bottles}>
              {product.bottles.map((bottle) => (
                <BottleLine key={bottle.key} bottle={bottle} today={today} ways={ways} />
              ))}
            </ul>
            {product.wastes && (
              <p className={styles.waste}>
                <Figure of={product.wasteCost} ways={ways} /> of it will be wasted
              </p>
            )}
          </div>
        </li>
      ))}
    </ul>
  );
}

function ReorderLine({ product, ways }: { product: ShelfProduct; ways: Ways }) {
  const { weeks, weeksUntilReorder, orderBy, runsOut, runsOutOn } = product;
  if (!runsOut) {
    return (
      <p className="soft">
        runs out <Figure of={runsOutOn} ways={ways} />
      </p>
    );
  }
  if (weeks === null) {
    return (
      <p className="grave">
        runs out <Figure of={runsOutOn} ways={ways} />, and no offer with a lead time
      </p>
    );
  }
  return (
    <p className={weeks <= 0 ? 'grave' : undefined}>
      <b>
        <Figure of={weeksUntilReorder} ways={ways}>
          reorder {weeks > 0 && 'in '}
          {weeksWords(weeks)}
        </Figure>
      </b>{' '}
      · order by <Figure of={orderBy} ways={ways} />
    </p>
  );
}

function BottleLine({ bottle, today, ways }: { bottle: ShelfBottle; today: Day; ways: Ways }) {
  const { remaining, lastUsableDay, value, pack, daysLeft, coming, receivedOn, openedOn } = bottle;
  return (
    <li className={styles.bottle}>
      <span>
        <Figure of={remaining} ways={ways} /> of {pack}
        {openedOn ? ', opened' : ''} · worth <Figure of={value} ways={ways} />
        {coming ? `, arrives ${showDayShort(receivedOn, today)}` : ''}
      </span>
      <span className={daysLeft !== null && daysLeft < 0 ? 'grave' : 'soft'}>
        last day <Figure of={lastUsableDay} ways={ways} />
        {daysLeft !== null && `, ${daysLeftText(daysLeft)}`}
      </span>
    </li>
  );
}
