import type { ShelfBottle } from '@/lib/views/shelf-bottles';
import type { ShelfProduct } from '@/lib/views/shelf-product';
import type { Day } from '@/shared/time/day';
import { showDayShort } from '@/shared/time/show-day';
import { ColumnHeads } from '../_parts/column-heads';
import { Figure } from '../_parts/figure';
import { OnOrder } from '../_parts/on-order';
import type { Ways } from '../_parts/shown-text';
import styles from './bottle-table.module.css';
import { daysLeftText } from './days-left-text';
import { weeksWords } from './weeks-words';

type BottleTableProps = { products: ShelfProduct[]; today: Day; ways: Ways };

const COLUMNS = [
  ...['Bottle', { number: 'Left' }, { number: 'Worth' }, 'Last usable day', 'Days to it'],
  ...['Stands in', 'Runs out', 'Reorder', 'By'],
];

/** The same shelf as a plain table: one block of rows per product, one row per container. */
export function BottleTable({ products, today, ways }: BottleTableProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable with the keyboard.
    <section className="sideways" tabIndex={0} aria-label="The shelf as a table">
      <table className={styles.table}>
        <ColumnHeads of={COLUMNS} />
        {products.map((product) => (
          <ProductRows key={product.id} product={product} today={today} ways={ways} />
        ))}
      </table>
    </section>
  );
}

type ProductRowsProps = { product: ShelfProduct; today: Day; ways: Ways };

function ProductRows({ product, today, ways }: ProductRowsProps) {
  const { id, name, kind, archived, onHand, value, runsOutOn, weeksUntilReorder, weeks, orderBy, bottles } = product;
  return (
    <tbody>
      <tr className={styles.product}>
        <th scope="rowgroup">
          <a href={`/shelf/${encodeURIComponent(id)}`}>{name}</a>{' '}
          <span className={styles.kind}>{archived ? `${kind}, put away` : kind}</span>
        </th>
        <td className="number">
          <Figure of={onHand} ways={ways} />
        </td>
        <td className="number">
          <Figure of={value} ways={ways} />
        </td>
        <td colSpan={3} />
        <td>
          <Figure of={runsOutOn} ways={ways} />
        </td>
        <td>
          <Figure of={weeksUntilReorder} ways={ways}>
            {weeksWords(weeks)}
          </Figure>
          {product.onOrder && (
            <div className={styles.coming}>
              <OnOrder of={product.onOrder} ways={ways} />
            </div>
          )}
        </td>
        <td>
          <Figure of={orderBy} ways={ways} />
        </td>
      </tr>
      {bottles.map((bottle) => (
        <BottleRow key={bottle.key} bottle={bottle} today={today} ways={ways} />
      ))}
    </tbody>
  );
}

function BottleRow({ bottle, today, ways }: { bottle: ShelfBottle; today: Day; ways: Ways }) {
  const { href, lotId, number, pack, openedOn, coming, receivedOn, remaining, lastUsableDay, daysLeft, value, keptIn } =
    bottle;
  return (
    <tr>
      <th scope="row" className={styles.container}>
        <a href={href}>
          {pack}, lot {lotId} no. {number}
        </a>
        {openedOn && `, opened ${showDayShort(openedOn, today)}`}
        {coming && `, arrives ${showDayShort(receivedOn, today)}`}
      </th>
      <td className="number">
        <Figure of={remaining} ways={ways} />
      </td>
      <td className="number">
        <Figure of={value} ways={ways} />
      </td>
      <td>
        <Figure of={lastUsableDay} ways={ways} />
      </td>
      <td className={daysLeft !== null && daysLeft < 0 ? 'grave' : undefined}>
        {daysLeft === null ? 'not known' : daysLeftText(daysLeft)}
      </td>
      <td>{keptIn ?? <span className="soft">not noted</span>}</td>
      <td colSpan={3} />
    </tr>
  );
}
