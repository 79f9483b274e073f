import type { ShelfSums as Sums } from '@/lib/views/shelf';
import { Figure } from '../_parts/figure';
import type { Ways } from '../_parts/shown-text';
import styles from './shelf-sums.module.css';

/** What stands there in money: at what was paid, what of it will be poured away, and what it would cost today. */
export function ShelfSums({ sums, ways }: { sums: Sums; ways: Ways }) {
  const wastes = sums.wasteCost.value.kind !== 'money' || sums.wasteCost.value.micros > 0;
  return (
    <dl className={styles.sums}>
      <div>
        <dt>On the shelf</dt>
        <dd>
          <b>
            <Figure of={sums.value} ways={ways} />
          </b>
        </dd>
      </div>
      <div>
        <dt>About to be wasted</dt>
        <dd className={wastes ? styles.waste : undefined}>
          <b>
            <Figure of={sums.wasteCost} ways={ways}>
              {wastes ? undefined : 'nothing'}
            </Figure>
          </b>
        </dd>
      </div>
      <div>
        <dt>To buy it again today</dt>
        <dd>
          <b>
            <Figure of={sums.replaceCost} ways={ways} />
          </b>
        </dd>
      </div>
    </dl>
  );
}
