import type { Fig } from '@/lib/views/figures';
import type { WasteSeen } from '@/lib/views/waste-ahead';
import { showDayShort } from '@/shared/time/show-day';
import { Bottle } from '../_parts/bottle';
import { EmptyPlace } from '../_parts/empty-place';
import { Figure } from '../_parts/figure';
import type { Ways } from '../_parts/shown-text';
import styles from './waste-shelf.module.css';

type WasteShelfProps = {
  waste: WasteSeen[];
  total: Fig;
  /** What is flagged about the bottles, counted in words; empty when nothing is. */
  flagged: string;
  ways: Ways;
};

const MOST_BOTTLES = 3;

/** The bottles that will be poured away in part, as they stand: hatched what nothing planned will use. */
export function WasteShelf({ waste, total, flagged, ways }: WasteShelfProps) {
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
                <Bottle bottle={{ ...one.bottle, tag: null }} scale={0.72} />
                <p className={styles.rail}>
                  <a className={styles.product} href={`/shelf/${encodeURIComponent(one.product.id)}`}>
                    {one.product.name}
                  </a>
                  <span>
                    <Figure of={one.amount} ways={ways} />, <Figure of={one.cost} ways={ways} />
                  </span>
                  <span className={one.past ? 'grave' : 'soft'}>
                    {one.past ? 'past its day' : `after ${showDayShort(one.lastDay, ways.today)}`}
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
            gone by {showDayShort(last.lastDay, ways.today)}.
          </p>
        </>
      )}
      <p className={styles.more}>
        <a href="/shelf?sort=dies">
          {waste.length > MOST_BOTTLES ? `All ${waste.length} bottles on the shelf` : 'The shelf, what dies first'}
        </a>
        {flagged && ` · ${flagged} there`}
      </p>
    </section>
  );
}
