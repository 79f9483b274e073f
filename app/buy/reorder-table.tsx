import type { BuyScreen, BuySort, ToBuy } from '@/lib/views/buy';
import { Figure } from '../_parts/figure';
import { OnOrder } from '../_parts/on-order';
import type { Ways } from '../_parts/shown-text';
import { weeksWords } from '../shelf/weeks-words';
import styles from './buy.module.css';
import { RampSpark } from './ramp-spark';

const COLUMNS: { name: string; sort: BuySort | null }[] = [
  { name: 'Product', sort: 'name' },
  { name: 'Left, 26 weeks ahead', sort: null },
  { name: 'Until reorder', sort: 'reorder' },
  { name: 'Order by', sort: null },
  { name: 'Runs out', sort: 'runs-out' },
  { name: 'Will be wasted', sort: 'waste' },
];

/** The page with one product large, in an order, with one page of the list. */
export const buyHref = (product: string | undefined, sort: BuySort, page: string): string =>
  `/buy?${new URLSearchParams({ ...(product !== undefined && { product }), sort, ...(page !== '' && { page }) })}`;

const pageText = ({ page, isAll }: BuyScreen['pages']): string => (isAll ? 'all' : page === 1 ? '' : String(page));

/** Every product with the weeks until it has to be ordered; what stands at the top of a column sorts by it. */
export function ReorderTable({ screen: { products, pages, shown, sort, ways } }: { screen: BuyScreen }) {
  const href = (by: BuySort) => buyHref(shown?.product.id, by, '');
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable with the keyboard.
    <section className="sideways" tabIndex={0} aria-label="Weeks until reorder">
      <table className={styles.reorder}>
        <thead>
          <tr>
            {COLUMNS.map((column) => (
              <th key={column.name} scope="col" aria-sort={column.sort === sort ? 'ascending' : undefined}>
                {column.sort === null ? column.name : <a href={href(column.sort)}>{column.name}</a>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {products.map((one) => (
            <ReorderRow
              key={one.product.id}
              of={one}
              isShown={one.product.id === shown?.product.id}
              href={buyHref(one.product.id, sort, pageText(pages))}
              ways={ways}
            />
          ))}
        </tbody>
      </table>
    </section>
  );
}

type RowProps = { of: ToBuy; isShown: boolean; href: string; ways: Ways };

function ReorderRow({ of, isShown, href, ways }: RowProps) {
  const {
    product,
    weeks,
    weeksUntilReorder,
    orderBy,
    runsOut,
    runsOutOn,
    from,
    wastes,
    wasteCost,
    onOrder,
    ramp,
    toEnter,
  } = of;
  const isLate = weeks !== null && weeks < 0;
  return (
    <tr data-shown={isShown ? '' : undefined}>
      <th scope="row">
        <a href={`${href}#ramp`}>{product.name}</a>
        {onOrder && (
          <small>
            <OnOrder of={onOrder} ways={ways} />
          </small>
        )}
      </th>
      <td>
        <RampSpark ramp={ramp} />
      </td>
      <td className={isLate ? styles.late : undefined}>
        <Figure of={weeksUntilReorder} ways={ways}>
          {weeksWords(weeks)}
        </Figure>
      </td>
      <td>
        <Figure of={orderBy} ways={ways} />
        {from && (
          <small className="soft">
            {from.supplier}, {from.pack}
          </small>
        )}
      </td>
      <td className={runsOut ? undefined : toEnter.length > 0 ? 'grave' : 'soft'}>
        <Figure of={runsOutOn} ways={ways} />
      </td>
      <td className={wastes ? 'grave' : 'soft'}>
        <Figure of={wasteCost} ways={ways} />
      </td>
    </tr>
  );
}
