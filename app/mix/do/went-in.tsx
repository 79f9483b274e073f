'use client';

import { stockText } from '@/shared/measure/read-stock';
import { fillsMixed } from '@/shared/mix/finish-body';
import { productIn } from '@/shared/mix/mix-plan';
import type { MixProgress } from '@/shared/mix/mix-progress';
import { pourIn, pourKey, productsOf } from '@/shared/mix/mix-screens';
import { pouredInAll } from '@/shared/mix/poured-so-far';
import { stock, sum } from '@/shared/quantity/amounts';
import styles from './do.module.css';
import type { Act } from './frame';

/** What went in, in all, with the way back to each pour. */
export function WentIn({ mix, act }: { mix: MixProgress; act: Act }) {
  const fills = fillsMixed(mix);
  const poured = pouredInAll(mix, fills);
  const amounts = new Map(
    (poured.ok ? poured.value : []).map(({ product, from, elsewhere }) => [
      product.id,
      stockText(stock(sum(from.map(({ amount }) => Number(amount))) + elsewhere), product.form),
    ]),
  );
  const products = [...new Set([...productsOf(mix), ...amounts.keys()])];
  return (
    <details className={styles.more}>
      <summary>What went in{fills > 1 && `, in ${fills} fills`}</summary>
      <ul className={styles.wentIn}>
        {products.map((product) => (
          <li key={product}>
            <span>
              {productIn(mix.plan, product).name} <b>{amounts.get(product) ?? 'none'}</b>
            </span>
            {productsOf(mix).includes(product) && (
              <button
                type="button"
                onClick={() => act({ do: 'go', to: pourKey(firstOpen(mix, fills, product), product) })}
              >
                Put right
              </button>
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}

/** The first fill in which it is not settled, else the first. */
function firstOpen(mix: MixProgress, fills: number, product: string): number {
  for (let fill = 0; fill < fills; fill += 1) if (!pourIn(mix, fill, product)?.done) return fill;
  return 0;
}
