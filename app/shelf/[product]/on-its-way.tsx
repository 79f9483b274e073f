import type { ProductScreen } from '@/lib/views/product';
import { showDayShort } from '@/shared/time/show-day';
import { DueWords } from '../../_parts/due-words';
import { Figure } from '../../_parts/figure';
import styles from './product.module.css';

/** What of a product is on order, order by order, and whether it will be enough. */
export function OnItsWay({ screen: { product, coming, ways, today } }: { screen: ProductScreen }) {
  const { onOrder } = product;
  if (!onOrder) return null;
  return (
    <section aria-labelledby="on-order">
      <h2 id="on-order">On order</h2>
      <ul className={styles.coming}>
        {coming.map(({ key, packs, pack, supplier, placedOn, href, receiveHref, due, expectedOn }) => (
          <li key={key}>
            <p>
              <b>
                {packs} × {pack}
              </b>{' '}
              from {supplier}, <DueWords due={due} expectedOn={expectedOn} ways={ways} />
            </p>
            <p className={styles.ways}>
              <a href={href}>The order of {showDayShort(placedOn, today)}</a>
              <a href={receiveHref}>Receive what came</a>
            </p>
          </li>
        ))}
      </ul>
      <p className="small">
        In all <Figure of={onOrder.onOrder} ways={ways} />.{' '}
        {onOrder.stillRunsOutOn === null ? (
          'If it comes as expected, it lasts through the 26 weeks ahead.'
        ) : (
          <b className="grave">
            ▲ All the same it runs out <Figure of={onOrder.stillRunsOutOn} ways={ways} />.
          </b>
        )}
      </p>
    </section>
  );
}
