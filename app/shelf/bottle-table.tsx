import type { ShelfProduct } from '@/lib/views/shelf-product';
import type { Day } from '@/shared/time/day';
import { showDayShort } from '@/shared/time/show-day';
import { Figure } from '../_parts/figure';
import type { Ways } from '../_parts/shown-text';
import styles from './bottle-table.module.css';
import { daysLeftText } from './days-left-text';
import { weeksWords } from './weeks-words';

type BottleTableProps = { products: ShelfProduct[]; today: Day; ways: Ways };

/** The same shelf as a plain table: one block of rows per product, one row per container. */
export function BottleTable({ products, today, ways }: BottleTableProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable with the keyboard.
    <section className="sideways" tabIndex={0} aria-label="The shelf as a table">
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Container</th>
            <th scope="col" className="number">
              Left
            </th>
            <th scope="col">Last usable day</th>
            <th scope="col">Days to it</th>
            <th scope="col" className="number">
              Worth
            </th>
            <th scope="col">Runs out</th>
            <th scope="col">Weeks until reorder</th>
            <th scope="col">Order by</th>
          </tr>
        </thead>
        {products.map((product) => (
          <ProductRows key={product.id} product={product} today={today} ways={ways} />
        ))}
      </table>
    </section>
  );
}

function ProductRows({ product, today, ways }: { product: ShelfProduct; today: Day; ways: Ways }) {
  const { id, name, kind, onHand, runsOutOn, weeksUntilReorder, weeks, orderBy, bottles } = product;
  return (
    <tbody>
      <tr className={styles.product}>
        <th scope="rowgroup">
          <a href={`/shelf/${encodeURIComponent(id)}`}>{name}</a> <span className={styles.kind}>{kind}</span>
        </th>
        <td className="number">
          <Figure of={onHand} ways={ways} />
        </td>
        <td colSpan={3} />
        <td>
          <Figure of={runsOutOn} ways={ways} />
        </td>
        <td>
          <Figure of={weeksUntilReorder} ways={ways}>
            {weeksWords(weeks)}
          </Figure>
        </td>
        <td>
          <Figure of={orderBy} ways={ways} />
        </td>
      </tr>
      {bottles.map((bottle) => (
        <tr key={bottle.key}>
          <td className={styles.container}>
            {bottle.pack}, lot {bottle.lot}
            {bottle.openedOn && `, opened ${showDayShort(bottle.openedOn, today)}`}
            {bottle.coming && `, arrives ${showDayShort(bottle.receivedOn, today)}`}
          </td>
          <td className="number">
            <Figure of={bottle.remaining} ways={ways} />
          </td>
          <td>
            <Figure of={bottle.lastUsableDay} ways={ways} />
          </td>
          <td className={bottle.daysLeft !== null && bottle.daysLeft < 0 ? 'grave' : undefined}>
            {bottle.daysLeft === null ? 'not known' : daysLeftText(bottle.daysLeft)}
          </td>
          <td className="number">
            <Figure of={bottle.value} ways={ways} />
          </td>
          <td colSpan={3} />
        </tr>
      ))}
    </tbody>
  );
}
