import type { PurchaseList } from '@/lib/views/purchase-list';
import { moneyText } from '@/shared/measure/money';
import { showMoneyIfKnown } from '@/shared/measure/show';
import type { Micros } from '@/shared/quantity/amounts';
import { showDay } from '@/shared/time/show-day';
import { ColumnHeads } from '../../../_parts/column-heads';
import type { Ways } from '../../../_parts/shown-text';
import { Thresholds } from '../order-totals';
import styles from '../orders.module.css';
import { MarkOrdered } from './mark-ordered';

type SupplierListProps = { list: PurchaseList; shop: string; ways: Ways };

/** What is ordered from one supplier, to be printed, sent as text, or marked as ordered. */
export function SupplierList({ list, shop, ways }: SupplierListProps) {
  const { supplier, lines, sums, note, order, placedOn, expectedOn, text, subject } = list;
  const money = (cost: Micros | null) => showMoneyIfKnown(cost, ways.currency);
  const id = `list-${supplier.id}-${order ?? 'draft'}`;
  return (
    <section aria-labelledby={id} className={styles.list}>
      <h2 id={id}>
        {supplier.name}, {showDay(placedOn, ways.today)}
      </h2>
      <table>
        <ColumnHeads of={[{ number: 'Packs' }, 'Product', { number: 'One at' }, { number: 'In all' }]} />
        <tbody>
          {lines.map(({ key, product, pack, count, price, cost }) => (
            <tr key={key}>
              <td className="number">{count}</td>
              <th scope="row">
                {product}, {pack}
              </th>
              <td className="number">{money(price)}</td>
              <td className="number">{money(cost)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="apart">
        Goods {money(sums.goods)} · freight {money(sums.freight)} · <b>in all {money(sums.total)}</b>
        {expectedOn && ` · expected ${showDay(expectedOn, ways.today)}`}
      </p>
      <p>
        <Thresholds sums={sums} currency={ways.currency} />
      </p>
      {note && <p>{note}</p>}
      <div className={styles.tools}>
        {order === null && <MarkOrdered {...sentOf(list, shop)} />}
        <a className="button" href={`mailto:?subject=${encodeURIComponent(subject)}&body=${encodeURIComponent(text)}`}>
          Send by e-mail
        </a>
      </div>
      <details className={styles.quiet}>
        <summary>The same as text, to copy</summary>
        <textarea className={styles.text} readOnly value={text} aria-label={`The list for ${supplier.name} as text`} />
      </details>
    </section>
  );
}

/** The list as the form of an order sends it. */
function sentOf({ formId, supplier, lines, placedOn, entered, note }: PurchaseList, shop: string) {
  const packs = lines.map(({ offer, count }) => ({ offer, count: String(count) }));
  const rows = lines.flatMap(({ offer, count, price }, row): [string, string][] => [
    [`lines[${row}].offer`, offer],
    [`lines[${row}].count`, String(count)],
    [`lines[${row}].price`, price === null ? '' : moneyText(price)],
  ]);
  const { expectedOn, freight } = entered;
  const aside = { expectedOn: expectedOn ?? '', freight: freight === null ? '' : moneyText(freight), note: note ?? '' };
  return { shop, supplier: supplier.id, formId, packs, fields: { placedOn, ...aside, ...Object.fromEntries(rows) } };
}
