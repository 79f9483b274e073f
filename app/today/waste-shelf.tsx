import type { Fig } from '@/lib/views/figures';
import type { WasteSeen } from '@/lib/views/waste-ahead';
import { showDayShort } from '@/shared/time/show-day';
import { Bottle } from '../_parts/bottle';
import { EmptyPlace } from '../_parts/empty-place';
import { Figure } from '../_parts/figure';
import type { Ways } from '../_parts/shown-text';
import styles from './waste-shelf.module.css';

type WasteShelfProps = { waste: WasteSeen[]; total: Fig; ways: Ways };

const MOST_BOTTLES = 3;

/** The bottles that will be poured away in part, as they stand: hatched what nothing planned will use. */
export function WasteShelf({ waste, total, ways }: WasteShelfProps) {
  const last = waste.at(-1);
  return (
    <section aria-labelledby="waste">
      <h2 id="waste">About to be wasted</h2>
      {!last ? (
        <EmptyPlace>Nothing will go past its last usable day before it is used.</EmptyPlace>
      ) : (
        <>
          <ul className={styles.shelf}>
            {waste.slice(0, MOST_BOTTLES).map((one) => (
              <li key={one.key} className={styles.place}>
                <Bottle bottle={{ ...one.bottle, tag: null }} scale={0.82} />
                <p className={styles.rail}>
                  <a className={styles.product} href={`/shelf/${encodeURIComponent(one.product.id)}`}>
                    {one.product.name}
                  </a>
                  <span>
                    <Figure of={one.amount} ways={ways} />{' '}
                    {one.past ? 'past its day' : `after ${showDayShort(one.lastDay, ways.today)}`}
                  </span>
                  <span>
                    <Figure of={one.cost} ways={ways} />
                  </span>
                </p>
              </li>
            ))}
          </ul>
          <p className={styles.total}>
            Left alone,{' '}
            <b>
              <Figure of={total} ways={ways} />
            </b>{' '}
            will be poured away by {showDayShort(last.lastDay, ways.today)}, in {waste.length}{' '}
            {waste.length === 1 ? 'bottle' : 'bottles'}. <a href="/shelf?sort=dies">See them all</a>
          </p>
        </>
      )}
    </section>
  );
}
